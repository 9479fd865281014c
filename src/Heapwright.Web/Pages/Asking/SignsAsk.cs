using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.Core.Diagnosis;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Http.Extensions;
using NodaTime;
using Reason = Heapwright.Core.Reasons.Reason;

namespace Heapwright.Web.Pages.Asking;

/// <summary>
/// The conversation about signs: what is known beforehand and what was tapped, in order. It travels in the address, so
/// that Back takes a tap back, and becomes a question of <c>diagnose</c>, which checks every word.
/// </summary>
/// <param name="Path">The page.</param>
/// <param name="Known">What is known beforehand, as a question of <c>diagnose</c>.</param>
/// <param name="Steps">What was tapped.</param>
public sealed record SignsAsk(string Path, JsonObject Known, ImmutableArray<SignStep> Steps)
{
    /// <summary>The field of the address that carries the steps.</summary>
    public const string Field = "a";

    /// <summary>The most steps that are taken.</summary>
    public const int MostSteps = 60;

    /// <summary>The code of the first question, which is none of the table.</summary>
    public const string Worry = "worry";

    private const string Age = "heap.age_days";
    private const double ColdestC = -50;
    private const double HottestC = 120;

    private static readonly HashSet<string> Lists = new(StringComparer.Ordinal)
    {
        "worry",
        "weather.lately",
        "heap.near",
        "signs.smell",
        "signs.see",
        "signs.visitors",
    };

    /// <summary>Reads what was tapped; refused where it was not made by this page.</summary>
    /// <param name="path">The page.</param>
    /// <param name="known">What is known beforehand.</param>
    /// <param name="texts">The steps as they came.</param>
    /// <param name="typed">Takes the reason where they are wrong.</param>
    public static SignsAsk Read(
        string path,
        JsonObject known,
        IReadOnlyCollection<string> texts,
        Posted typed
    )
    {
        ArgumentNullException.ThrowIfNull(texts);
        ArgumentNullException.ThrowIfNull(typed);
        var steps = ImmutableArray.CreateBuilder<SignStep>();
        if (texts.Count > MostSteps)
        {
            Refuse(typed, Say.Of("asking.too_many", texts.Count, MostSteps));
        }

        foreach (var text in texts.Take(MostSteps))
        {
            if (SignStep.Read(text) is not { } step || !IsKnown(step))
            {
                Refuse(
                    typed,
                    Say.Of(
                        "asking.no_answer",
                        text.Length > SignStep.Longest ? text[..SignStep.Longest] + "…" : text
                    )
                );
            }
            else if (!steps.Contains(step))
            {
                steps.Add(step);
            }
        }

        return new SignsAsk(path, known, typed.IsRefused ? [] : steps.ToImmutable());
    }

    /// <summary>What is known before anything is tapped: the diary of a heap, if there is one, and the season.</summary>
    /// <param name="record">The heap with its diary, or null.</param>
    /// <param name="now">The present.</param>
    /// <param name="here">The site.</param>
    public static JsonObject KnownOf(HeapRecord? record, Instant now, Here here)
    {
        ArgumentNullException.ThrowIfNull(here);
        var known = record is null ? [] : SignsQuestion.Of(record, now);
        var zone = record?.Kept.TimeZone() ?? here.Zone;
        if (SiteSeason.Of(SiteDays.DayOf(now, zone), zone.Id) is { } season)
        {
            Set(known, "weather.season", season);
        }

        return known;
    }

    /// <summary>Takes in what a probe in the core read; refused where it is no such number.</summary>
    /// <param name="text">What was typed, in the unit of the site; empty for nothing.</param>
    /// <param name="show">How quantities are shown.</param>
    /// <param name="typed">Takes the reason.</param>
    public SignsAsk WithProbe(string text, Shown show, Posted typed)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(typed);
        if (string.IsNullOrEmpty(text))
        {
            return this;
        }

        if (NumberText.Read(text, "probe", show.Culture, out var value) is { } refusal)
        {
            typed.Refuse(refusal);
            return this;
        }

        var celsius = show.FromTemperature(value);
        if (celsius is < ColdestC or > HottestC)
        {
            typed.Refuse(
                Refusal.Of(
                    "probe",
                    "sites.number_range",
                    value,
                    show.InTemperature(ColdestC),
                    show.InTemperature(HottestC)
                )
            );
            return this;
        }

        return this with
        {
            Steps = Steps.Add(
                new SignStep(
                    SignStep.Reading,
                    celsius.ToString("0.##", CultureInfo.InvariantCulture)
                )
            ),
        };
    }

    /// <summary>Whether an answer can be acted on: one cause stands out, or nothing is left that would tell much.</summary>
    /// <param name="answer">The answer of <c>diagnose</c>.</param>
    public static bool IsSettled(JsonObject answer)
    {
        const double StandsOut = 0.6;
        const double WellAbove = 0.5;
        const double HardlyWorthAsking = 0.12;
        // A growth that is no fault may stand beside one, so of what is healthy only the whole counts.
        var first =
            answer.Objects("causes").FirstOrDefault() is { } cause && !IsNoFault(cause)
                ? cause.Number("probability") ?? 0
                : 0;
        var gain = answer.Objects("ask_next").FirstOrDefault().Number("gain") ?? 0;
        return first >= StandsOut
            || answer.Number("healthy_probability") >= StandsOut
            || (first >= WellAbove && gain < 2 * HardlyWorthAsking)
            || gain < HardlyWorthAsking;
    }

    /// <summary>The cautions that go before everything else: those of fire.</summary>
    /// <param name="answer">An answer of <c>diagnose</c>.</param>
    public static IEnumerable<JsonObject> Urgent(JsonObject answer) =>
        answer.Objects("cautions").Where(c => c.Text("id") is "smoke_keep_away" or "fire_in_heap");

    /// <summary>Whether a cause needs nothing changed.</summary>
    /// <param name="cause">A cause of an answer of <c>diagnose</c>.</param>
    public static bool IsNoFault(JsonObject cause) =>
        SignModelReader.Model.Causes.Any(c => c.IsHealthy && c.Id == cause.Text("id"));

    /// <summary>The question of <c>diagnose</c>.</summary>
    public JsonObject Question()
    {
        var question = Known.DeepClone().AsObject();
        foreach (var step in Steps)
        {
            Put(question, step);
        }

        return question;
    }

    /// <summary>Whether a question was answered here, be it with "don't know".</summary>
    /// <param name="code">Its code.</param>
    public bool IsAsked(string code) => Steps.Any(s => CodeOf(s) == code);

    /// <summary>The address of the page with these steps.</summary>
    /// <param name="steps">The steps.</param>
    /// <param name="ask">The question to put next; null for the best.</param>
    public string Url(IEnumerable<SignStep> steps, string? ask = null)
    {
        var query = new QueryBuilder(steps.Select(s => KeyValuePair.Create(Field, s.ToString())));
        if (ask is not null)
        {
            query.Add("ask", ask);
        }

        return Path + query.ToQueryString().ToUriComponent();
    }

    /// <summary>The address one tap ago.</summary>
    public string BackUrl =>
        Url(Steps.Take(Steps.Length - 1), Steps.Length == 0 ? null : CodeOf(Steps[^1]));

    /// <summary>The address at which an answer is given anew.</summary>
    /// <param name="step">The answer.</param>
    public string AgainUrl(SignStep step) =>
        Url(Steps.Where(s => CodeOf(s) != CodeOf(step)), CodeOf(step));

    /// <summary>The address at which a question that takes several answers is put once more.</summary>
    /// <param name="step">One of its answers.</param>
    public string MoreUrl(SignStep step) => Url(Steps, CodeOf(step));

    /// <summary>Whether a question takes several answers and this is one of them.</summary>
    /// <param name="step">The answer.</param>
    public static bool TakesMore(SignStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return Lists.Contains(step.Field);
    }

    /// <summary>The code of the question that a step answers.</summary>
    /// <param name="step">The step.</param>
    public static string CodeOf(SignStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Field switch
        {
            SignStep.None or SignStep.Unknown => step.Word,
            SignStep.Reading => "feel_core",
            Worry => Worry,
            _ => SignModelReader
                .Questions.Where(q => q.Field == step.Field)
                .OrderByDescending(q => q.Options.Contains(step.Word, StringComparer.Ordinal))
                .Select(q => q.Code)
                .First(),
        };
    }

    /// <summary>A question of the table.</summary>
    /// <param name="code">Its code.</param>
    public static SignQuestion? Find(string code) =>
        SignModelReader.Questions.FirstOrDefault(q => q.Code == code);

    /// <summary>The question of the table that <c>diagnose</c> asks next.</summary>
    /// <param name="asked">A question as <c>diagnose</c> answers it.</param>
    public static SignQuestion? Find(JsonObject asked)
    {
        var field = asked.Text("field");
        var options = asked.Texts("options");
        return SignModelReader.Questions.FirstOrDefault(q =>
            q.Field == field && options.All(o => q.Options.Contains(o, StringComparer.Ordinal))
        );
    }

    // Only fields that a question of this page fills; the words are for the reader of diagnose to judge.
    private static bool IsKnown(SignStep step) =>
        step.Field switch
        {
            SignStep.None => Find(step.Word) is { } question && Lists.Contains(question.Field),
            SignStep.Unknown => step.Word == Worry || Find(step.Word) is not null,
            SignStep.Reading or Worry => true,
            _ => SignModelReader.Questions.Any(q => q.Field == step.Field),
        };

    private void Put(JsonObject question, SignStep step)
    {
        switch (step.Field)
        {
            case SignStep.Unknown when step.Word == Worry:
                break;
            case SignStep.Unknown:
                Add(question, "signs.unknown", step.Word);
                break;
            case SignStep.None:
                None(question, Find(step.Word)!);
                break;
            case SignStep.Reading:
                var reading = new JsonObject { ["temperature_c"] = Plain(step.Word) };
                if (Known["heap"].Number("age_days") is { } age)
                {
                    reading["day"] = age;
                }

                AddNode(question, "readings", reading);
                break;
            case Age:
                Set(question, Age, Plain(step.Word));
                break;
            default:
                if (Lists.Contains(step.Field))
                {
                    Add(question, step.Field, step.Word);
                }
                else
                {
                    Set(question, step.Field, step.Word);
                }

                break;
        }
    }

    // A smell that is none and a weather that is ordinary have words of their own; the rest was looked for and not found.
    private void None(JsonObject question, SignQuestion asked)
    {
        switch (asked.Field)
        {
            case "signs.smell":
                Set(question, asked.Field, new JsonArray("none"));
                break;
            case "weather.lately":
                Add(question, asked.Field, "normal");
                break;
            case "heap.near":
                Add(question, "signs.unknown", asked.Code);
                break;
            default:
                foreach (
                    var word in asked.Options.Where(o =>
                        !Steps.Contains(new SignStep(asked.Field, o))
                    )
                )
                {
                    Add(question, "signs.absent", word);
                }

                break;
        }
    }

    private static void Add(JsonObject question, string field, string word) =>
        AddNode(question, field, word);

    private static void AddNode(JsonObject question, string field, JsonNode node)
    {
        var (owner, name) = Owner(question, field);
        if (owner[name] is not JsonArray list)
        {
            owner[name] = list = [];
        }

        list.Add(node);
    }

    private static void Set(JsonObject question, string field, JsonNode node)
    {
        var (owner, name) = Owner(question, field);
        owner[name] = node;
    }

    private static (JsonObject Owner, string Name) Owner(JsonObject question, string field)
    {
        var parts = field.Split('.');
        var owner = question;
        foreach (var part in parts[..^1])
        {
            if (owner[part] is not JsonObject inner)
            {
                owner[part] = inner = [];
            }

            owner = inner;
        }

        return (owner, parts[^1]);
    }

    // A number if it is one; otherwise the reader says what is wrong with it.
    private static JsonNode Plain(string word) =>
        double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? number
            : word;

    private static void Refuse(Posted typed, string sentence) =>
        typed.Refuse(new Refusal("", Reason.Of("sites.question_wrong", sentence)));
}

using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;
using NodaTime;

namespace Heapwright.App.Lessons;

/// <summary>What a heap taught, ready to be shown.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Measures">The measures of the sentences.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Cautions">The cautions, as in answers.</param>
public sealed record TaughtHeap(
    HeapLesson Lesson,
    Measures Measures,
    ImmutableArray<string> Assumptions,
    JsonArray Cautions
)
{
    /// <summary>What was predicted against what was measured, a sentence each, with the word of the verdict.</summary>
    public ImmutableArray<(string Verdict, string Text)> Rows =>
        [.. Lesson.Rows.Select(r => (LessonWords.Of(r.Verdict), Sentence(r)))];

    /// <summary>What was learned, in sentences; empty where nothing moved enough.</summary>
    public ImmutableArray<string> Learned
    {
        get
        {
            var said = ImmutableArray.CreateBuilder<string>();
            if (Lesson.MoistureMoved)
            {
                var (before, after) = Lesson.Fit.BuiltMoisture;
                said.Add(
                    Words.Of(
                        after.Typical > before.Typical ? "lessons.wetter" : "lessons.drier",
                        Measures.Culture,
                        after.Typical,
                        after.Low,
                        after.High,
                        before.Typical
                    )
                );
            }

            said.AddRange(Lesson.Moved.Select(f => LessonWords.Learned(f, Measures)));
            return said.ToImmutable();
        }
    }

    /// <summary>Why it should not be leant on, in sentences; empty where it may be.</summary>
    public ImmutableArray<string> Doubts =>
        [
            .. Lesson
                .Fit.Stale.Where(s => s == Core.Forecasts.StaleReason.Misfit)
                .Select(_ => Words.Of("lessons.misfit")),
        ];

    /// <summary>The lesson as it is kept for the next heap.</summary>
    /// <param name="kept">The heap.</param>
    /// <param name="now">The present.</param>
    public KeptLesson ToKeep(KeptHeap kept, Instant now)
    {
        ArgumentNullException.ThrowIfNull(kept);
        return new KeptLesson
        {
            Id = IdOf(kept.Id),
            IsSample = kept.IsSample,
            HeapId = kept.Id,
            Name = kept.Name,
            BayId = kept.BayId,
            Bin = kept.Question.TryGetProperty("bin", out var bin)
                ? bin
                : JsonSerializer.SerializeToElement(new JsonObject()),
            MadeAt = now,
            Readings = Lesson.Fit.ReadingsUsed,
            Parameters = Lesson.Fit.Learned.ToImmutableSortedDictionary(
                l => ParameterNames.Of(l.Key),
                l => new LessonScore(
                    Math.Clamp(l.Value.Mean, -10, 10),
                    Math.Clamp(l.Value.Deviation, 0.01, 10)
                ),
                StringComparer.Ordinal
            ),
        };
    }

    /// <summary>The id of the lesson of a heap.</summary>
    /// <param name="heapId">The heap.</param>
    public static Guid IdOf(Guid heapId) => DeterministicIds.Of(heapId, "taught");

    /// <summary>The whole answer.</summary>
    /// <param name="kept">The heap.</param>
    /// <param name="lesson">What is kept of it; null for nothing.</param>
    public Answer Answer(KeptHeap kept, KeptLesson? lesson)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var json = new JsonObject
        {
            ["schema"] = Json.Schema,
            ["heap"] = new JsonObject { ["id"] = kept.Id.ToString(), ["name"] = kept.Name },
        };
        foreach (var (name, value) in Short())
        {
            json[name] = value?.DeepClone();
        }

        json["fitted_moved_by_sd"] = HeapLessons.Moved;
        json["can_be_kept"] = Lesson.CanBeKept;
        json["kept"] = lesson is null
            ? null
            : new JsonObject
            {
                ["made_at"] = NodaTime.Text.InstantPattern.ExtendedIso.Format(lesson.MadeAt),
                ["readings"] = lesson.Readings,
                ["used"] = lesson.IsUsed,
            };
        json["assumptions"] = Json.Of(Assumptions);
        json["cautions"] = Cautions.DeepClone();
        return new Answer(json, Yes: true, TaughtText.Of(this, kept, lesson));
    }

    /// <summary>The short part for the record of a batch.</summary>
    public JsonObject Short()
    {
        var (before, after) = Lesson.Fit.BuiltMoisture;
        var parameters = new JsonObject();
        foreach (var (parameter, score) in Lesson.Fit.Learned.OrderBy(l => l.Key))
        {
            parameters[ParameterNames.Of(parameter)] = new JsonObject
            {
                ["mean"] = score.Mean,
                ["deviation"] = score.Deviation,
            };
        }

        return new JsonObject
        {
            ["readings_used"] = Lesson.Fit.ReadingsUsed,
            ["predicted"] = new JsonArray([.. Lesson.Rows.Select(r => (JsonNode)Row(r))]),
            ["built_moisture_pct_wb"] = new JsonObject
            {
                ["before"] = Json.Of(before),
                ["after"] = Json.Of(after),
            },
            ["learned"] = Json.Of(Learned),
            ["fitted"] = new JsonArray([
                .. Lesson.Moved.Select(f =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["parameter"] = ParameterNames.Of(f.Parameter),
                            ["before"] = Json.Of(f.Before),
                            ["after"] = Json.Of(f.After),
                        }
                ),
            ]),
            ["learned_parameters"] = parameters,
            ["doubts"] = Json.Of(Doubts),
        };
    }

    private JsonObject Row(LessonRow row) =>
        new()
        {
            ["what"] = LessonWords.Of(row.Subject),
            ["day"] = Json.Of(row.Day),
            ["expected"] = row.Predicted is { } p
                ? new JsonObject
                {
                    ["low"] = Json.Of(p.Low),
                    ["typical"] = Json.Of(p.Typical),
                    ["high"] = Json.Of(p.High),
                    ["share_reaching"] = p.Reached,
                }
                : null,
            ["measured"] = Json.Of(row.Measured),
            ["verdict"] = LessonWords.Of(row.Verdict),
            ["side"] = row.Verdict switch
            {
                LessonVerdict.Lower => "lower",
                LessonVerdict.Higher => "higher",
                _ => null,
            },
            ["text"] = Sentence(row),
        };

    private string Sentence(LessonRow row)
    {
        var word = LessonWords.Of(row.Subject);
        var name = LessonWords.Name(word, Measures);
        if (row.Day is { } day && row.Subject == LessonSubject.Moisture)
        {
            name = Words.Of("lessons.on_day", Measures.Culture, name, day);
        }

        var why = row.Why is null ? null : Measures.Say(row.Why);
        if (row.Predicted is not { } predicted || row.Measured is not { } measured)
        {
            return Words.Of("lessons.untold", null, name, why ?? "");
        }

        var isDay = row.Subject is LessonSubject.First55 or LessonSubject.Below40;
        return Words.Of(
            "lessons.row",
            null,
            name,
            LessonWords.Value(word, measured, Measures),
            LessonWords.Range(word, predicted, Measures),
            row.Verdict == LessonVerdict.CannotTell
                ? Words.Of("lessons.verdict_cannot_tell", null, why ?? "")
                : Words.Of(
                    "lessons.verdict_"
                        + row.Verdict.ToString().ToLowerInvariant()
                        + (isDay && row.Verdict != LessonVerdict.Inside ? "_day" : "")
                )
        );
    }
}

using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.HeatRecords;
using Heapwright.App.Library;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.Contract;

/// <summary>Reads the question of <c>hygiene</c>: how the heap is kept, the readings and turns, and which rules.</summary>
/// <param name="assumptions">Takes what was assumed.</param>
internal sealed class HygieneReader(Assumptions assumptions)
{
    /// <summary>The most readings in one question.</summary>
    public const int MostReadings = 20_000;

    /// <summary>The most turns in one question.</summary>
    public const int MostTurns = 1000;

    /// <summary>The most probes in one question.</summary>
    public const int MostProbes = 100;

    /// <summary>The lowest temperature that is read, °C.</summary>
    public const double Coldest = -40;

    /// <summary>The highest temperature that is read, °C: no heap that does not burn is hotter.</summary>
    public const double Hottest = 110;

    /// <summary>Reads a question in JSON.</summary>
    /// <param name="input">The question.</param>
    /// <param name="options">What was said beside it.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public HygieneQuestion Read(Input input, HygieneOptions options)
    {
        var top = input.Fields(
            "process",
            "readings",
            "turns",
            "solids_pct",
            "rules",
            "country",
            "name",
            "schema"
        );
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        top["name"]?.Text(80);
        NotTwice(top, "process", options.Process);
        NotTwice(top, "country", options.Country);
        NotTwice(top, "rules", options.Rules);
        NotTwice(top, "solids_pct", options.SolidsPercent);
        string[] words = [.. HygieneRuleReader.ProcessWords];
        options = options with
        {
            Process = options.Process ?? top.Needed("process").Choice(words),
            Country = options.Country ?? Country(top["country"]),
            Rules = options.Rules ?? Rules(top["rules"]),
            SolidsPercent = options.SolidsPercent ?? top["solids_pct"]?.Number(0.1, 100),
        };
        var entries = top.Needed("readings").Items(1, MostReadings).Select(Reading).ToList();
        SameForm(entries, input.File, i => $"readings[{i}]");
        var turns = top["turns"]?.Items(0, MostTurns);
        if (turns is not null)
        {
            var first = entries.MinBy(e => e.Time.Moment.Hours)!.Time;
            entries.AddRange(turns.Select(t => HeatEntry.Turn(Turn(t, first))));
        }

        return Question(entries, turns is not null, options, input.File);
    }

    /// <summary>A question from entries read already.</summary>
    /// <param name="entries">Readings and turns.</param>
    /// <param name="turnsAreKnown">Whether the record says of turns.</param>
    /// <param name="options">The process, and the rest where it is said.</param>
    /// <param name="file">The name to use in messages.</param>
    /// <exception cref="InputProblem">Too many probes, or too long a record.</exception>
    public HygieneQuestion Question(
        IReadOnlyList<HeatEntry> entries,
        bool turnsAreKnown,
        HygieneOptions options,
        string file
    )
    {
        var readings = entries.Where(e => !e.IsTurn).ToList();
        var probes = readings.Select(e => e.Probe).Distinct(StringComparer.Ordinal).Count();
        if (probes > MostProbes)
        {
            throw new InputProblem(
                file,
                "",
                $"has readings of {probes} probes; 1 to {MostProbes} are allowed"
            );
        }

        var days = readings.Max(e => e.Time.Moment.Day) - readings.Min(e => e.Time.Moment.Day) + 1;
        if (days > HeatLog.MostDays)
        {
            throw new InputProblem(
                file,
                "",
                $"spans {days} days; 1 to {HeatLog.MostDays} are allowed"
            );
        }

        var rules = HygieneRuleReader.Rules;
        if (options.Rules is { } named)
        {
            rules = [.. rules.Where(r => named.Contains(r.Id, StringComparer.Ordinal))];
        }
        else if (options.Country is { } country)
        {
            rules = [.. rules.Where(r => r.Countries.Contains(country, StringComparer.Ordinal))];
        }

        return new HygieneQuestion
        {
            Process = HygieneRuleReader.Process(options.Process!),
            Record = HeatRecord.Of(entries, turnsAreKnown, options.Process!),
            Rules = rules,
            AreNamed = options.Rules is not null,
            Country = options.Country,
            SolidsPercent = options.SolidsPercent,
        };
    }

    /// <summary>Holds that all times have one form.</summary>
    /// <param name="entries">The entries.</param>
    /// <param name="file">The name to use in messages.</param>
    /// <param name="place">The place of an entry.</param>
    /// <exception cref="InputProblem">They have not.</exception>
    public void SameForm(IReadOnlyList<HeatEntry> entries, string file, Func<int, string> place)
    {
        for (var i = 1; i < entries.Count; i++)
        {
            var (here, first) = (entries[i].Time, entries[0].Time);
            if (here.Form != first.Form)
            {
                throw new InputProblem(
                    file,
                    place(i),
                    here.Form == EntryTimeForm.Day || first.Form == EntryTimeForm.Day
                        ? $"\"{here.Text}\" is mixed with \"{first.Text}\"; write all as times or all as days"
                        : $"\"{here.Text}\" is mixed with \"{first.Text}\"; write all times with an offset or all without"
                );
            }
        }

        if (entries[0].Time.Form == EntryTimeForm.WithoutOffset)
        {
            assumptions.Say("hygiene.no_offset");
        }
    }

    /// <summary>Says that readings without a name are of one probe, and names it.</summary>
    public string NamelessProbe()
    {
        assumptions.Say("hygiene.nameless_probe");
        return "probe";
    }

    private static void NotTwice(InputFields top, string field, object? beside)
    {
        if (beside is not null && top[field] is { } stands)
        {
            throw stands.Problem("stands in the question and beside it; say it once");
        }
    }

    private static string? Country(Input? input) => input?.Choice([.. HygieneRuleReader.Countries]);

    private static List<string>? Rules(Input? input)
    {
        string[] known = [.. HygieneRuleReader.Rules.Select(r => r.Id)];
        return input?.Items(1, known.Length).Select(i => i.Choice(known)).ToList();
    }

    private HeatEntry Reading(Input input)
    {
        var fields = input.Fields("time", "day", "probe", "temperature_c", "temperature_f");
        if (fields["time"] is not null && fields["day"] is not null)
        {
            throw input.Problem("has a time and a day; write one of them");
        }

        if (fields["temperature_c"] is not null && fields["temperature_f"] is not null)
        {
            throw input.Problem("has a temperature in °C and one in °F; write one of them");
        }

        var time = fields["day"] is { } day
            ? EntryTime.OfDay(day.Number(0, EntryTime.MostDays))
            : Time(
                fields["time"]
                    ?? throw input.Problem("has neither a \"time\" nor a \"day\"; one is needed")
            );
        var probe = fields["probe"] is { } name ? Probe(name) : NamelessProbe();
        var (celsius, written) = fields["temperature_f"] is { } fahrenheit
            ? Fahrenheit(
                fahrenheit.Number(Degrees.Fahrenheit(Coldest), Degrees.Fahrenheit(Hottest))
            )
            : Celsius(fields.Needed("temperature_c").Number(Coldest, Hottest));
        return new HeatEntry(time, probe, celsius, written);
    }

    /// <summary>A temperature in °C, and as it is written in the record.</summary>
    /// <param name="celsius">°C.</param>
    public static (double Celsius, string Written) Celsius(double celsius) =>
        (celsius, celsius.ToString(CultureInfo.InvariantCulture) + " C");

    /// <summary>A temperature in °F, converted, and as it is written in the record.</summary>
    /// <param name="fahrenheit">°F.</param>
    public static (double Celsius, string Written) Fahrenheit(double fahrenheit) =>
        (Degrees.Celsius(fahrenheit), fahrenheit.ToString(CultureInfo.InvariantCulture) + " F");

    private static string Probe(Input input)
    {
        var name = input.Text(60);
        return name.Any(char.IsControl)
            ? throw input.Problem(
                "the name of a probe holds a control character; letters are needed"
            )
            : name;
    }

    private static EntryTime Time(Input input)
    {
        var text = input.Text(40);
        return EntryTime.OfText(text)
            ?? throw input.Problem(
                $"\"{text}\" is no time; write it such as 2026-05-02T09:30:00+02:00"
            );
    }

    private EntryTime Turn(Input input, EntryTime first)
    {
        if (input.IsText)
        {
            var time = Time(input);
            return time.Form == first.Form
                ? time
                : throw input.Problem(
                    $"\"{time.Text}\" is not written as the times of the readings are; \"{first.Text}\" is one of those"
                );
        }

        var day = EntryTime.OfDay(input.Number(0, EntryTime.MostDays));
        if (first.Form == EntryTimeForm.Day)
        {
            return day;
        }

        assumptions.Say("hygiene.turns_from_first");
        return day with
        {
            Moment = new LogMoment(
                first.Moment.Hours + day.Moment.Hours,
                first.Moment.Day + day.Moment.Day
            ),
        };
    }
}

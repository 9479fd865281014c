using Heapwright.App.Library;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>Reads the temperatures of a question of <c>diagnose</c>, and what is usual for the heap.</summary>
internal sealed class DiagnoseReadings(SignModel model, Assumptions assumptions, Clashes clashes)
{
    private const double UnsaidAir = 13; // °C, where neither air nor season is said
    private const double HotCelsius = 45; // a core that is not frozen, and no small heap in frost
    private const double JumpCelsius = 25; // between readings of one day and place

    private readonly List<SignFact> facts = [];
    private readonly List<string> answered = [];
    private readonly DiagnoseWording words = new(assumptions.Measures);

    /// <summary>What they say.</summary>
    public IEnumerable<SignFact> Facts => facts;

    /// <summary>The fields that were answered.</summary>
    public IEnumerable<string> Answered => answered;

    /// <summary>The age of the heap, said or by the day of the last reading.</summary>
    public double? AgeDays { get; private set; }

    /// <summary>Reads them.</summary>
    /// <param name="top">The question.</param>
    /// <param name="air">The air, °C, where it is known.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="isFrozen">Whether it was seen frozen.</param>
    /// <exception cref="InputProblem">A word or a number is wrong.</exception>
    public void Read(InputFields top, double? air, DiagnoseHeap heap, bool isFrozen)
    {
        AgeDays = heap.AgeDays;
        var told = new List<HeatTold>();
        foreach (var item in top["readings"]?.Items(0, 2000) ?? [])
        {
            told.Add(Reading(item, air));
        }

        // Those with a day are put in order; the rest stand where they were told.
        var ordered = told.TrueForAll(r => r.Day is not null) ? ByDay(told) : told;
        facts.AddRange(HeatCourse.Facts(model, ordered, air));
        if (told.Count > 0)
        {
            answered.Add("signs.feel.core");
        }

        CheckReadings(ordered, isFrozen);
        AgeDays ??= ordered.Count > 0 ? ordered[^1].Day : null;
        Expected(ordered, heap, air, AgeDays);
        if (AgeDays is { } days)
        {
            facts.Add(NumberFacts.Of(model.Field("heap.age_days"), days, inLogs: true));
            answered.Add("heap.age_days");
        }

        var usual = top["usual_c"]?.Spread(-30, 100).Typical;
        var than = top["than_usual"]?.Choice([.. DiagnoseWords.Words("than_usual")]);
        if (usual is { } normal && ordered.LastOrDefault(r => r.Spot == "core") is { } last)
        {
            than = Compared(last.Celsius, normal, than);
        }

        if (than is not null)
        {
            facts.Add(new ChoiceFact(model.Field("than_usual"), than));
            answered.Add("than_usual");
        }
    }

    // What was said in words counts; where nothing was, the readings speak; where they clash, neither counts.
    private string? Compared(double now, double usual, string? than)
    {
        const double Much = 6; // °C by which a heap differs from itself without a cause
        var read =
            now < usual - Much ? "lower"
            : now > usual + Much ? "higher"
            : "same";
        var (shownNow, shownUsual) = (
            assumptions.Measures.Celsius(now),
            assumptions.Measures.Celsius(usual)
        );
        if (than is null)
        {
            assumptions.Say("signs.than_usual_from_readings", shownNow, shownUsual);
        }
        else if ((than, read) is ("lower", "higher") or ("higher", "lower"))
        {
            clashes.Say("usual_against_than", shownNow, shownUsual, words.Word("than_usual", than));
            return null;
        }

        return than ?? read;
    }

    // A heap built at one go is held against the simulation of a good one of its size, age and air.
    private void Expected(List<HeatTold> readings, DiagnoseHeap heap, double? air, double? age)
    {
        if (
            readings.LastOrDefault(r => r.Spot == "core") is not { } now
            || (heap.VolumeM3 ?? heap.RoughVolumeM3) is not { } volume
            || heap.IsTrickle
            || (now.Day ?? age) is not { } day
            || SignModelReader.ExpectedHeat.At(volume, air ?? UnsaidAir, day) is not { } expected
        )
        {
            return;
        }

        var measures = assumptions.Measures;
        if (air is null)
        {
            assumptions.Say("signs.expected_air", measures.Celsius(UnsaidAir));
        }

        assumptions.Say(
            "signs.expected_heat",
            measures.Heap(volume),
            Math.Round(day, 1),
            measures.Celsius(air ?? UnsaidAir),
            measures.CelsiusRange(expected)
        );
        facts.Add(
            new ChoiceFact(
                model.Field("readings.expected"),
                ExpectedHeat.Place(expected, now.Celsius)
            )
        );
    }

    private void CheckReadings(List<HeatTold> readings, bool isFrozen)
    {
        var (hottest, widest) = (0.0, 0.0);
        for (var r = 0; r < readings.Count; r++)
        {
            hottest = r == 0 ? readings[r].Celsius : Math.Max(hottest, readings[r].Celsius);
            for (var earlier = 0; earlier < r; earlier++)
            {
                widest = Math.Max(widest, Between(readings[earlier], readings[r]));
            }
        }

        if (hottest > HotCelsius && isFrozen)
        {
            clashes.Say("hot_and_frozen", assumptions.Measures.CelsiusAsRead(hottest));
        }

        if (widest > JumpCelsius)
        {
            facts.Add(new WordFact(model.Field("readings.place"), "jumps", isAbsence: false));
            clashes.Say("readings_jump", assumptions.Measures.TemperatureDifference(widest));
        }
    }

    // °C between two readings of one day and place.
    private static double Between(HeatTold one, HeatTold other) =>
        one.Day is { } day && day == other.Day && one.Spot == other.Spot
            ? Math.Abs(one.Celsius - other.Celsius)
            : 0;

    // Those of one day stay in the order in which they were told.
    private static List<HeatTold> ByDay(List<HeatTold> told)
    {
        var ordered = new List<HeatTold>();
        foreach (var reading in told)
        {
            var at = ordered.Count;
            while (at > 0 && ordered[at - 1].Day > reading.Day)
            {
                at--;
            }

            ordered.Insert(at, reading);
        }

        return ordered;
    }

    private HeatTold Reading(Input item, double? air)
    {
        const double UnsaidAirError = 8;
        var fields = item.Fields("day", "temperature_c", "above_air_c", "spot");
        var spot = fields["spot"]?.Choice([.. DiagnoseWords.Spots]) ?? "core";
        var day = fields["day"]?.Number(0, 20_000);
        if (fields["temperature_c"] is { } read)
        {
            return new HeatTold(day, read.Spread(-50, 120).Typical, spot, 0);
        }

        var above =
            fields["above_air_c"]
            ?? throw item.Problem(
                "the field \"temperature_c\" is missing; it is needed, or \"above_air_c\""
            );
        if (air is null)
        {
            assumptions.Say(
                "signs.air_unsaid",
                assumptions.Measures.Celsius(UnsaidAir),
                assumptions.Measures.TemperatureDifference(UnsaidAirError)
            );
        }

        return new HeatTold(
            day,
            above.Spread(-60, 110).Typical + (air ?? UnsaidAir),
            spot,
            air is null ? UnsaidAirError : 2
        );
    }
}

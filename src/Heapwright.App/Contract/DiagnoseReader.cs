using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Readings;

namespace Heapwright.App.Contract;

/// <summary>Reads the question of <c>diagnose</c>, in which everything may be missing.</summary>
internal sealed class DiagnoseReader(Assumptions assumptions)
{
    private const int MostWords = 60;
    private const double UnsaidAir = 13; // °C, where neither air nor season is said
    private const double WarmCelsius = 20; // air in which nothing freezes
    private const double HotCelsius = 45; // a core that is not frozen, and no small heap in frost
    private const double JumpCelsius = 25; // between readings of one day and place
    private const double DaysThatCountAsLately = 2.5;

    private readonly SignModel model = SignModelReader.Model;
    private readonly List<SignFact> facts = [];
    private readonly Clashes clashes = new(assumptions.Measures);
    private readonly DiagnoseWording words = new(assumptions.Measures);
    private readonly HashSet<string> answered = new(StringComparer.Ordinal);
    private readonly HashSet<(string, string)> settled = [];

    /// <summary>Reads a question.</summary>
    /// <param name="input">The question.</param>
    /// <exception cref="InputProblem">A word or a number is wrong.</exception>
    public DiagnoseQuestion Read(Input input)
    {
        var top = input.Fields(
            "heap",
            "weather",
            "readings",
            "usual_c",
            "than_usual",
            "signs",
            "done",
            "worry",
            "seed",
            "schema"
        );
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        var seed = top["seed"] is { } own ? (ulong)own.Whole(0, int.MaxValue) : 1;
        var heap = new DiagnoseHeap(model, assumptions, clashes);
        heap.Read(top["heap"], seed);
        facts.AddRange(heap.Facts);
        answered.UnionWith(heap.Answered);
        Several(top["heap"]?.Fields(DiagnoseHeap.Fields)["near"], "heap.near");
        var air = Weather(top["weather"]);
        var squeeze = Signs(top["signs"]);
        var age = Readings(top, air, heap);
        Done(top["done"], age);
        Worry(top["worry"]);
        return new DiagnoseQuestion(
            [.. facts],
            answered,
            settled,
            heap.Materials,
            heap.VolumeM3,
            squeeze,
            clashes.All
        );
    }

    private double? Weather(Input? input)
    {
        if (input?.Fields("air_c", "season", "lately") is not { } weather)
        {
            return null;
        }

        var air = weather["air_c"]?.Spread(-50, 55).Typical;
        if (air is { } celsius)
        {
            facts.Add(NumberFacts.Of(model.Field("weather.air_c"), celsius, inLogs: false));
            answered.Add("weather.air_c");
        }

        var season = weather["season"]?.Choice([.. DiagnoseWords.Words("weather.season")]);
        if (season is not null)
        {
            answered.Add("weather.season");
            if (air is null)
            {
                facts.Add(new ChoiceFact(model.Field("weather.season"), season));
            }
        }

        Several(weather["lately"], "weather.lately");
        if (air > WarmCelsius && facts.Any(f => f is { Place: "weather.lately", Word: "frost" }))
        {
            clashes.Say("frost_in_warm_air", assumptions.Measures.Celsius(air.Value));
        }

        return air ?? AirOf(season);
    }

    // Where only the season is said, the air is taken as usual for a temperate garden.
    private double? AirOf(string? season)
    {
        double? air = season switch
        {
            "winter" => 3,
            "spring" or "autumn" => 11,
            "summer" => 20,
            _ => null,
        };
        if (air is { } celsius)
        {
            assumptions.Say("signs.air_of_season", assumptions.Measures.Celsius(celsius));
        }

        return air;
    }

    private string? Signs(Input? input)
    {
        if (
            input?.Fields(
                "squeeze",
                "feel",
                "smell",
                "see",
                "white_where",
                "visitors",
                "absent",
                "unknown"
            )
            is not { } signs
        )
        {
            return null;
        }

        Places(signs["squeeze"], "signs.squeeze", ["core", "outside", "base"]);
        Places(signs["feel"], "signs.feel", ["core", "outside"]);
        Smell(signs["smell"]);
        Several(signs["see"], "signs.see");
        One(signs["white_where"], "signs.white_where");
        Several(signs["visitors"], "signs.visitors");
        foreach (var item in List(signs["absent"]))
        {
            Absent(item);
        }

        foreach (var item in List(signs["unknown"]))
        {
            Unknown(item);
        }

        return signs["squeeze"]?.Fields("core", "outside", "base")["core"]?.Text();
    }

    private void Smell(Input? input)
    {
        foreach (var item in List(input))
        {
            var word = item.Choice([.. SignWords.Smell]);
            answered.Add("signs.smell");
            var smell = model.Field("signs.smell");
            facts.Add(
                word == "none"
                    ? new NoneFact(smell, word, DiagnoseWords.BadSmells)
                    : new WordFact(smell, word, isAbsence: false)
            );
        }
    }

    private void Absent(Input item)
    {
        var field = FieldOf(item, item.Choice([.. AllSigns]));
        var word = item.Text();
        if (word != "none" && settled.Add((field, word)))
        {
            var absent = new WordFact(model.Field(field), word, isAbsence: true);
            if (facts.Any(f => !f.IsAbsence && f.Place == field && f.Word == word))
            {
                clashes.Say("both_told", words.Word(field, word));
            }

            facts.Add(absent);
        }
    }

    // What nobody knows is asked no more: a sign, or a whole field by its name.
    private void Unknown(Input item)
    {
        string[] names =
        [
            "squeeze",
            "feel",
            "smell",
            "see",
            "visitors",
            "white_where",
            "readings",
            "temperature_c",
            "materials",
            "volume_m3",
            "air_c",
            "usual_c",
            "done",
            "worry",
            .. SignModelReader.Questions.Select(q => q.Field),
            .. SignModelReader.Questions.Select(q => q.Code),
            .. SignModelReader.Questions.Select(q =>
                q.Field[(q.Field.IndexOf('.', StringComparison.Ordinal) + 1)..]
            ),
        ];
        var word = item.Choice([.. AllSigns, .. names]);
        if (!names.Contains(word, StringComparer.Ordinal))
        {
            settled.Add((FieldOf(item, word), word));
            return;
        }

        answered.Add(word);
        foreach (
            var question in SignModelReader.Questions.Where(q =>
                q.Field.EndsWith("." + word, StringComparison.Ordinal)
                || q.Field.StartsWith("signs." + word + ".", StringComparison.Ordinal)
            )
        )
        {
            answered.Add(question.Field);
        }
    }

    private static IEnumerable<string> AllSigns =>
        SignWords.Smell.Concat(SignWords.See).Concat(SignWords.Visitors);

    // Smoke is seen and smelt; where only the word stands, it is what is seen.
    private static string FieldOf(Input item, string word) =>
        SignWords.See.Contains(word) ? "signs.see"
        : SignWords.Visitors.Contains(word) ? "signs.visitors"
        : SignWords.Smell.Contains(word) ? "signs.smell"
        : throw item.Problem($"\"{word}\" is no sign");

    private double? Readings(InputFields top, double? air, DiagnoseHeap heap)
    {
        var age = heap.AgeDays;
        var told = new List<HeatTold>();
        foreach (var item in top["readings"]?.Items(0, 2000) ?? [])
        {
            told.Add(Reading(item, air));
        }

        // Those with a day are put in order; the rest stand where they were told.
        var ordered = told.All(r => r.Day is not null) ? [.. told.OrderBy(r => r.Day)] : told;
        facts.AddRange(HeatCourse.Facts(model, ordered, air));
        if (told.Count > 0)
        {
            answered.Add("signs.feel.core");
        }

        CheckReadings(ordered);
        age ??= ordered.Count > 0 ? ordered[^1].Day : null;
        Expected(ordered, heap, air, age);
        if (age is { } days)
        {
            facts.Add(NumberFacts.Of(model.Field("heap.age_days"), days, inLogs: true));
            answered.Add("heap.age_days");
        }

        var usual = top["usual_c"]?.Spread(-30, 100).Typical;
        var than = top["than_usual"]?.Choice([.. DiagnoseWords.Words("than_usual")]);
        if (
            usual is { } normal
            && ordered.LastOrDefault(r => r.Spot == "core") is { Spot: not null } last
        )
        {
            than = Compared(last.Celsius, normal, than);
        }

        if (than is not null)
        {
            facts.Add(new ChoiceFact(model.Field("than_usual"), than));
            answered.Add("than_usual");
        }

        return age;
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
            readings.LastOrDefault(r => r.Spot == "core") is not { Spot: not null } now
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
            measures.Heap(UnitsNet.Volume.FromCubicMeters(volume)),
            day,
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

    private void CheckReadings(List<HeatTold> readings)
    {
        var hottest = readings.Count > 0 ? readings.Max(r => r.Celsius) : 0;
        if (hottest > HotCelsius && facts.Any(f => f is { Place: "signs.see", Word: "frozen" }))
        {
            clashes.Say("hot_and_frozen", assumptions.Measures.CelsiusAsRead(hottest));
        }

        var widest = readings
            .Where(r => r.Day is not null)
            .GroupBy(r => (r.Day, r.Spot))
            .Select(g => g.Max(r => r.Celsius) - g.Min(r => r.Celsius))
            .DefaultIfEmpty(0)
            .Max();
        if (widest > JumpCelsius)
        {
            facts.Add(new WordFact(model.Field("readings.place"), "jumps", isAbsence: false));
            clashes.Say("readings_jump", assumptions.Measures.TemperatureDifference(widest));
        }
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
            assumptions.Say("signs.air_unsaid", assumptions.Measures.Celsius(UnsaidAir));
        }

        return new HeatTold(
            day,
            above.Spread(-60, 110).Typical + (air ?? UnsaidAir),
            spot,
            air is null ? UnsaidAirError : 2
        );
    }

    private void Done(Input? input, double? age)
    {
        var isLately = false;
        foreach (var item in input?.Items(0, 200) ?? [])
        {
            var fields = item.Fields("day", "days_ago", "do", "result");
            var day = fields["day"]?.Number(0, 20_000);
            var ago = fields["days_ago"]?.Number(0, 20_000) ?? age - day;
            if (ago > age)
            {
                clashes.Say("done_before_built", ago, age);
            }

            var deed = fields.Needed("do").Choice([.. DiagnoseWords.Deeds]);
            var result = fields["result"]?.Choice([.. DiagnoseWords.Results]) ?? "unknown";
            if (result != "unknown")
            {
                facts.Add(new ChoiceFact(model.Field("done." + deed), result));
            }

            isLately |= ago is >= 0 and <= DaysThatCountAsLately && deed is not "cover";
        }

        if (isLately)
        {
            facts.Add(new ChoiceFact(model.Field("done.lately"), "yes"));
        }
    }

    private void Worry(Input? input)
    {
        const double Unsaid = 0.65; // the share in which a trouble is there and not among those that are told
        var worry = model.Field("worry");
        var told = new List<string>();
        foreach (var item in List(input))
        {
            var word = item.Choice([.. DiagnoseWords.Worries, "none"]);
            if (word == "none")
            {
                facts.Add(
                    new NoneFact(worry, word, ["not_heating", "cooled", "smell", "too_hot"], 0.4)
                );
                continue;
            }

            told.Add(word);
            facts.Add(new WordFact(worry, word, isAbsence: false));
        }

        if (told.Count > 0)
        {
            facts.Add(new UnsaidFact(worry, told, Unsaid));
        }
    }

    private void Places(Input? input, string field, string[] places)
    {
        var fields = input?.Fields(places);
        foreach (var place in places)
        {
            One(fields?[place], field + "." + place);
        }
    }

    private void One(Input? input, string field)
    {
        if (input is not null)
        {
            facts.Add(
                new ChoiceFact(model.Field(field), input.Choice([.. DiagnoseWords.Words(field)]))
            );
            answered.Add(field);
        }
    }

    private void Several(Input? input, string field)
    {
        foreach (var item in List(input))
        {
            var word = item.Choice([.. DiagnoseWords.Words(field)]);
            facts.Add(new WordFact(model.Field(field), word, isAbsence: false));
            if (!field.StartsWith("signs.", StringComparison.Ordinal))
            {
                answered.Add(field);
            }
        }
    }

    // A list, or one word without its brackets; a word that stands twice counts once.
    private static IEnumerable<Input> List(Input? input) =>
        input is null ? []
        : input.IsText ? [input]
        : input.Items(0, MostWords).DistinctBy(i => i.Found());
}

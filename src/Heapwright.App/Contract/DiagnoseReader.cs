using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Readings;

namespace Heapwright.App.Contract;

/// <summary>Reads the question of <c>diagnose</c>, in which everything may be missing.</summary>
internal sealed class DiagnoseReader(Assumptions assumptions)
{
    private const int MostWords = 60;
    private const double WarmCelsius = 20; // air in which nothing freezes
    private const double DaysThatCountAsLately = 2.5;

    private readonly SignModel model = SignModelReader.Model;
    private readonly List<SignFact> facts = [];
    private readonly Clashes clashes = new(assumptions.Measures);
    private readonly DiagnoseWording words = new(assumptions.Measures);
    private readonly HashSet<string> answered = new(StringComparer.Ordinal);
    private readonly HashSet<string> settled = new(StringComparer.Ordinal);

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
        var readings = new DiagnoseReadings(model, assumptions, clashes);
        var isFrozen = facts.Any(f => f is { Place: "signs.see", Word: "frozen" });
        readings.Read(top, air, heap, isFrozen);
        facts.AddRange(readings.Facts);
        answered.UnionWith(readings.Answered);
        Done(top["done"], readings.AgeDays);
        Worry(top["worry"]);
        return new DiagnoseQuestion(
            [.. facts],
            answered,
            settled,
            heap.Materials,
            heap.ToMend with
            {
                Squeeze = squeeze,
            },
            heap.IsSizedByWord,
            seed,
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
        if (word != "none" && settled.Add(DiagnoseQuestion.Sign(field, word)))
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
            settled.Add(DiagnoseQuestion.Sign(FieldOf(item, word), word));
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

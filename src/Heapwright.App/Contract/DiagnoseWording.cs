using System.Globalization;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>Facts, questions and causes of <c>diagnose</c> in words.</summary>
/// <param name="measures">The measures of its sentences.</param>
internal sealed class DiagnoseWording(Measures measures)
{
    // The temperatures in what is said of causes, °C.
    private static readonly Dictionary<string, double[]> Warmth = new(StringComparer.Ordinal)
    {
        ["acid_stall_name"] = [38],
        ["acid_stall_watch"] = [40],
        ["cold_weather_watch"] = [5],
        ["disease_risk_disagree"] = [55, 80],
        ["disease_risk_tell"] = [55],
        ["fire_risk_tell"] = [75],
        ["normal_hot_tell"] = [50, 65],
        ["overheating_tell"] = [66],
        ["overheating_watch"] = [65],
    };

    /// <summary>What is said of a cause, its temperatures in the measures; null where nothing is.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="about">name, tell, now, watch or disagree.</param>
    public string? Of(string cause, string about)
    {
        var code = $"{cause}_{about}";
        object[] warmth =
        [
            .. Warmth.GetValueOrDefault(code, []).Select(c => (object)measures.Celsius(c)),
        ];
        return Words.TryOf("signs." + code, measures.Culture, warmth);
    }

    /// <summary>A sentence of this kind of answer.</summary>
    /// <param name="code">Its code.</param>
    /// <param name="values">The values in it.</param>
    public string Say(string code, params object[] values) =>
        Words.Of("signs." + code, measures.Culture, values);

    /// <summary>A fact, such as "smell of ammonia" or "squeezed in the core: drips".</summary>
    /// <param name="fact">The fact.</param>
    public string Fact(SignFact fact)
    {
        if (fact is TriedFact tried)
        {
            return Say(tried.Helped ? "tried_helped" : "tried_no_help", Of(fact.Word, "name")!);
        }

        if (double.TryParse(fact.Word, CultureInfo.InvariantCulture, out var number))
        {
            return Told(fact.Place, number);
        }

        var said = fact is ReadingFact reading
            ? Say("word_readings_" + fact.Word) + " " + measures.CelsiusAsRead(reading.Celsius)
            : Word(fact.Place, fact.Word);
        var whole = Say("say_" + Key(fact.Place), said);
        return fact.IsAbsence && fact.Word != "none" ? Say("absent", whole) : whole;
    }

    /// <summary>A word of a field.</summary>
    /// <param name="field">The field.</param>
    /// <param name="word">The word.</param>
    public string Word(string field, string word) =>
        Words.TryOf($"signs.word_{Key(field)}_{word}", measures.Culture) ?? word;

    /// <summary>A field that is a number.</summary>
    /// <param name="field">The field.</param>
    /// <param name="number">The number in its unit.</param>
    public string Told(string field, double number) =>
        field switch
        {
            "heap.age_days" => Say(
                "say_heap_age_days" + Languages.End(number),
                Figures.One(number, measures.Culture)
            ),
            "heap.volume_m3" => Say("say_heap_volume_m3", measures.Heap(number)),
            "weather.air_c" => Say("say_weather_air_c", measures.Celsius(number)),
            _ => Say("say_" + Key(field), Figures.One(number, measures.Culture)),
        };

    /// <summary>A question.</summary>
    /// <param name="question">The question.</param>
    public string Ask(SignQuestion question) =>
        Words.TryOf("signs.ask_" + question.Code, measures.Culture)
        ?? Say("ask_" + Key(question.Field));

    /// <summary>A publication.</summary>
    /// <param name="key">Its key.</param>
    public string Source(string key) =>
        References.IsFromMemory(key)
            ? Say("from_memory", References.Title(key))
            : References.Title(key);

    /// <summary>A chance in whole hundredths; never none and never all.</summary>
    /// <param name="chance">The chance.</param>
    public string Hundredths(double chance) =>
        chance < 0.01 ? "<1"
        : chance > 0.99 ? ">99"
        : (chance * 100).ToString("0", measures.Culture);

    /// <summary>The number in a word such as <c>d12</c>.</summary>
    public static double Number(string word) =>
        double.Parse(word.AsSpan(1), CultureInfo.InvariantCulture);

    private static string Key(string field) => field.Replace('.', '_');
}

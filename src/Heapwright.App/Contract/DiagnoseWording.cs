using System.Globalization;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>Facts, questions and causes of <c>diagnose</c> in words.</summary>
/// <param name="measures">The measures of its sentences.</param>
internal sealed class DiagnoseWording(Measures measures)
{
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
            return Say(tried.Helped ? "tried_helped" : "tried_no_help", Say(fact.Word + "_name"));
        }

        var said = fact is ReadingFact reading
            ? Say("word_readings_" + fact.Word) + " " + measures.CelsiusAsRead(reading.Celsius)
            : Word(fact.Place, fact.Word);
        var whole = Say("say_" + Key(fact.Place), said);
        return fact.IsAbsence && fact.Word != "none" ? Say("absent", whole) : whole;
    }

    /// <summary>A word of a field, or the number that stands for it.</summary>
    /// <param name="field">The field.</param>
    /// <param name="word">The word.</param>
    public string Word(string field, string word) =>
        field == "weather.air_c"
            ? word
            : Words.TryOf($"signs.word_{Key(field)}_{word}", measures.Culture) ?? word;

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

using Heapwright.App.Texts;

namespace Heapwright.App.Contract;

/// <summary>What in a question of <c>diagnose</c> does not fit together, each thing said once.</summary>
/// <param name="measures">The measures of the sentences.</param>
internal sealed class Clashes(Measures measures)
{
    private readonly List<string> said = [];

    /// <summary>The measures of the sentences.</summary>
    public Measures Measures => measures;

    /// <summary>All sentences, in the order in which they were said.</summary>
    public IReadOnlyList<string> All => said;

    /// <summary>Says a contradiction.</summary>
    /// <param name="code">The code of its sentence.</param>
    /// <param name="values">The values in it.</param>
    public void Say(string code, params object[] values)
    {
        var sentence = Words.Of("signs." + code, measures.Culture, values);
        if (!said.Contains(sentence, StringComparer.Ordinal))
        {
            said.Add(sentence);
        }
    }
}

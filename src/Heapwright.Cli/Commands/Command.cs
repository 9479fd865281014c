using System.Collections.Immutable;

namespace Heapwright.Cli.Commands;

/// <summary>One question that the command line can ask.</summary>
/// <param name="Name">What is typed: one word, or two such as <c>materials search</c>.</param>
/// <param name="Answer">Finds the answer; throws an <see cref="App.Contract.InputProblem"/> for a wrong question.</param>
internal sealed record Command(string Name, Func<Call, Reply> Answer)
{
    /// <summary>Whether the question is a JSON document given with <c>--input</c>.</summary>
    public bool TakesInput { get; init; }

    /// <summary>Whether the answer can do without <see cref="TakesInput"/>.</summary>
    public bool InputIsOptional { get; init; }

    /// <summary>The options it takes beside those of all commands.</summary>
    public ImmutableArray<string> Takes { get; init; } = [];

    /// <summary>Those of <see cref="Takes"/> that must be given.</summary>
    public ImmutableArray<string> Needs { get; init; } = [];

    /// <summary>Whether the answer can be drawn with <c>--svg</c> and <c>--pdf</c>.</summary>
    public bool Draws { get; init; }

    /// <summary>Whether samples are drawn, so that <c>--seed</c> means something.</summary>
    public bool Samples { get; init; }

    /// <summary>Whether the answer can be printed with <c>--pdf</c> alone.</summary>
    public bool Prints { get; init; }

    /// <summary>Whether the question is a record of heat: a table too, named as a word, with options beside it.</summary>
    public bool TakesRecord { get; init; }

    /// <summary>What the words after the name are, such as <c>TEXT</c> or <c>ID</c>; null if none may follow.</summary>
    public string? WordsAre { get; init; }

    /// <summary>The code of the one-line description in Texts/Cli.resx, such as <c>cli.materials_search</c>.</summary>
    public string TextCode => "cli." + Name.Replace(' ', '_');

    /// <summary>The options that mean something here.</summary>
    public IEnumerable<string> Options
    {
        get
        {
            if (TakesInput)
            {
                yield return "--input";
            }

            foreach (var option in Needs.Concat(Takes))
            {
                yield return option;
            }

            if (Draws)
            {
                yield return "--svg";
                yield return "--pdf";
                yield return "--paper";
            }

            if (Prints)
            {
                yield return "--pdf";
                yield return "--paper";
            }

            if (TakesRecord)
            {
                yield return "--process";
                yield return "--country";
                yield return "--rules";
                yield return "--solids";
            }

            if (Samples)
            {
                yield return "--seed";
            }

            yield return "--units";
            yield return "--json";
            yield return "--help";
        }
    }
}

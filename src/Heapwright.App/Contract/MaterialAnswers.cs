using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Guessing;

namespace Heapwright.App.Contract;

/// <summary>The answers of the command <c>materials</c>.</summary>
public static class MaterialAnswers
{
    private const int MostIdLetters = 100;

    /// <summary>All materials, in the order of the library.</summary>
    public static JsonObject List() => Several(LibraryReader.Library.All);

    /// <summary>The materials that fit anyone's words, best first; an empty list where none does.</summary>
    /// <param name="text">Anyone's words.</param>
    public static JsonObject Search(string text) =>
        Several(MaterialSearch.Search(LibraryReader.Library, text));

    /// <summary>One material.</summary>
    /// <param name="id">Its id, such as <c>wheat_straw</c>.</param>
    /// <exception cref="InputProblem">No material has this id.</exception>
    public static JsonObject Show(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        var material = LibraryReader.Library.Find(id) ?? throw Unknown(id);
        return One(material, [.. Assumed()]);
    }

    /// <summary>A material with wide ranges for stuff nobody can name.</summary>
    /// <param name="question">An object with <c>freshness</c> and <c>kind</c>, and <c>colour</c> and <c>feel</c> where known.</param>
    /// <exception cref="InputProblem">A field or a word is not known, or freshness or kind is missing.</exception>
    public static JsonObject Guess(Input question)
    {
        var fields = question.Fields("freshness", "kind", "colour", "feel");
        var freshness = fields.Needed("freshness").Choice(LookWords.Freshnesses.AsSpan());
        var kind = fields.Needed("kind").Choice(LookWords.Kinds.AsSpan());
        var colour = DescribingWords.Read(fields["colour"], LookWords.Colours);
        var feel = DescribingWords.Read(fields["feel"], LookWords.Feels);
        var guess = MaterialGuess.Of(
            LibraryReader.Library,
            LookAndFeel.Of(freshness, kind, colour, feel)
        );
        var sources = guess
            .Material.Properties.Known()
            .Select(p => new PropertySource(
                PropertyFacts.FieldName(p),
                DerivedValues.Ours,
                EvidenceKind.Estimate,
                "pooled from the ranges of kindred materials of this library"
            ))
            .Concat(DerivedValues.Sources(guess.Material.Properties))
            .ToImmutableArray();
        return One(
            guess.Material with
            {
                Sources = sources,
                Note = Words.Of("materials.guess_note"),
            },
            [.. guess.Assumptions.Select(a => Words.Of(a)), .. Assumed()]
        );
    }

    private static JsonObject Several(IEnumerable<Material> materials) =>
        new()
        {
            ["schema"] = Json.Schema,
            ["materials"] = new JsonArray([
                .. materials.Select(m => (JsonNode?)MaterialParts.Of(m)),
            ]),
            ["assumptions"] = Json.Of(Assumed()),
            // Cautions stand with the material they belong to.
            ["cautions"] = new JsonArray(),
        };

    private static JsonObject One(Material material, ImmutableArray<string> assumptions)
    {
        var answer = MaterialParts.Of(material);
        answer.Insert(0, "schema", Json.Schema);
        answer["assumptions"] = Json.Of(assumptions);
        return answer;
    }

    private static IEnumerable<string> Assumed() =>
        [
            Words.Of("materials.assume_ranges"),
            Words.Of("materials.assume_density"),
            Words.Of("materials.assume_ratio"),
            Words.Of("materials.assume_pools"),
        ];

    private static InputProblem Unknown(string id)
    {
        var shown = id.Length <= MostIdLetters ? id : id[..MostIdLetters];
        var found = MaterialSearch.Search(LibraryReader.Library, shown, 1);
        var nearest =
            found.Count > 0
                ? found[0].Id
                : Nearest.Of(shown, [.. LibraryReader.Library.All.Select(m => m.Id)]);
        return new InputProblem(
            "materials show",
            "",
            $"no material has the id \"{shown}\"; the nearest is \"{nearest}\" (materials search finds ids by anyone's words)"
        );
    }
}

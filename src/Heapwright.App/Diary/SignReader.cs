using Heapwright.App.Contract;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>Reads what was squeezed, felt, smelt and seen.</summary>
internal static class SignReader
{
    /// <summary>Its fields.</summary>
    public static string[] Fields { get; } = ["squeeze", "feel", "smell", "see", "visitors"];

    /// <summary>The signs; head and arrival are filled in by the caller.</summary>
    /// <param name="fields">The fields of the entry.</param>
    /// <exception cref="InputProblem">A word is not known, stands twice, or there is none.</exception>
    public static SignEntry Read(InputFields fields)
    {
        var sign = new SignEntry
        {
            Id = Placeholder,
            HeapId = Placeholder,
            At = default,
            ReceivedAt = default,
            Way = default,
            Squeeze =
            [
                .. Places(fields["squeeze"], [.. EntryWords.Places], EntryWords.Squeezes)
                    .Select(p =>
                        (p.Place, (SqueezeWord)EntryWords.Number(EntryWords.Squeezes, p.Word))
                    ),
            ],
            Feel = [.. Places(fields["feel"], ["core", "outside"], SignWords.Feel)],
            Smell = Words(fields["smell"], SignWords.Smell),
            See = Words(fields["see"], SignWords.See),
            Visitors = Words(fields["visitors"], SignWords.Visitors),
        };
        return sign.IsEmpty
            ? throw fields.Owner.Problem(
                $"a sign needs at least one of {string.Join(", ", Fields)}"
            )
            : sign;
    }

    private static Guid Placeholder { get; } = new("ffffffff-ffff-ffff-ffff-ffffffffffff");

    private static IEnumerable<(SignPlace Place, string Word)> Places(
        Input? input,
        string[] places,
        IReadOnlyList<string> words
    )
    {
        if (input is null)
        {
            yield break;
        }

        var fields = input.Fields(places);
        foreach (var place in places)
        {
            if (fields[place] is { } word)
            {
                yield return (
                    (SignPlace)EntryWords.Number(EntryWords.Places, place),
                    word.Choice([.. words])
                );
            }
        }
    }

    private static EquatableList<string> Words(Input? input, IReadOnlyList<string> known)
    {
        if (input is null)
        {
            return [];
        }

        var words = new List<string>();
        foreach (var item in input.Items(1, EntryLimits.MostWords))
        {
            var word = item.Choice([.. known]);
            if (words.Contains(word, StringComparer.Ordinal))
            {
                throw item.Problem($"\"{word}\" stands there twice; once is enough");
            }

            words.Add(word);
        }

        return [.. words];
    }
}

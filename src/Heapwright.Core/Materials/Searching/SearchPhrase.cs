namespace Heapwright.Core.Materials.Searching;

/// <summary>One of the names of a material, taken apart.</summary>
/// <param name="Material">The place of the material in the library.</param>
/// <param name="Worth">1 for a name people use; less for the shelf it stands on.</param>
/// <param name="Text">The name as it is written.</param>
/// <param name="Words">The stems, as numbers in the vocabulary.</param>
/// <param name="Joined">Each two neighbouring stems as one word, as numbers in the vocabulary.</param>
internal sealed record SearchPhrase(
    int Material,
    double Worth,
    string Text,
    int[] Words,
    int[] Joined
);

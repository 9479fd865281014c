using System.Collections.Immutable;

namespace Heapwright.App.Library;

/// <summary>What a material of the library is called in German.</summary>
/// <param name="Name">Its plain name.</param>
/// <param name="AlsoCalled">Other words people use for it.</param>
/// <param name="Note">What else is worth knowing, in one sentence; may be empty.</param>
internal sealed record GermanName(string Name, ImmutableArray<string> AlsoCalled, string Note)
{
    /// <summary>The name and all other words.</summary>
    public IEnumerable<string> All => AlsoCalled.Prepend(Name);
}

namespace Heapwright.App.Paper;

/// <summary>A heading with its sentences; without sentences it is not printed.</summary>
internal sealed record PaperBlock(string Heading, IReadOnlyList<string> Texts);

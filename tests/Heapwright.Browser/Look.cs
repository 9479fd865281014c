namespace Heapwright.Browser;

/// <summary>A theme in a window, and which barriers are looked for there.</summary>
/// <param name="Theme">light, dark or sun.</param>
/// <param name="Width">The width of the window.</param>
/// <param name="Height">Its height.</param>
/// <param name="Rules">The rules of axe; empty for all of them, null for none.</param>
internal sealed record Look(string Theme, int Width, int Height, IReadOnlyList<string>? Rules);

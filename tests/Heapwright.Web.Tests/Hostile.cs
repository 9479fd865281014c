namespace Heapwright.Web.Tests;

/// <summary>Names that try to be something else.</summary>
internal static class Hostile
{
    /// <summary>A formula, a script, a path, quotes, commas and a new line in one.</summary>
    public const string Name =
        "=cmd()|'/C x'!A0,\"q\"; <script>alert(1)</script>\n../../etc/passwd äöü 🜁 END:VEVENT";
}

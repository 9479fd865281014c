using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Heapwright.App.Paper;

/// <summary>
/// Puts what follows from the content in the place of what the writer of PDF files draws by lot (the tags of its fonts,
/// the identifiers of the file), so that the same sheet gives the same bytes. Lengths stay, and with them every offset
/// in the file.
/// </summary>
internal static partial class SettledBytes
{
    private const int MillisecondsAtMost = 2000;

    /// <summary>The file without anything drawn by lot.</summary>
    /// <param name="pdf">The file as it was written.</param>
    public static byte[] Of(byte[] pdf)
    {
        var tags = new List<string>();
        var text = FontTag()
            .Replace(
                Encoding.Latin1.GetString(pdf),
                tag =>
                {
                    var place = tags.IndexOf(tag.Value);
                    if (place < 0)
                    {
                        place = tags.Count;
                        tags.Add(tag.Value);
                    }

                    return "SHEET" + (char)('A' + place);
                }
            );
        text = Identifier().Replace(text, id => new string('0', id.Length));
        var hash = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(text)));
        var uuid = new Guid(SHA256.HashData(Encoding.Latin1.GetBytes(hash)).AsSpan(0, 16)).ToString(
            "D"
        );
        text = Identifier().Replace(text, id => id.Length == 32 ? hash[..32] : uuid);
        return Encoding.Latin1.GetBytes(text);
    }

    [GeneratedRegex(
        "(?<=/(FontName|BaseFont)/)[A-Z]{6}(?=[+])",
        RegexOptions.ExplicitCapture,
        MillisecondsAtMost
    )]
    private static partial Regex FontTag();

    // The two of the trailer, and those of the document and the instance in its description.
    [GeneratedRegex(
        "(?<=/ID\\[(<[0-9A-F]{32}>)?<)[0-9A-F]{32}(?=>)|(?<=<xmpMM:(DocumentID|InstanceID)>uuid:)[0-9a-f-]{36}(?=<)",
        RegexOptions.ExplicitCapture,
        MillisecondsAtMost
    )]
    private static partial Regex Identifier();
}

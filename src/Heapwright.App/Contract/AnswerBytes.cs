using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heapwright.App.Contract;

/// <summary>Answers as bytes, the same whoever asks: the command line or the web.</summary>
public static class AnswerBytes
{
    // Read by programs and people, never put into a web page as it stands: letters stay letters.
    private static readonly JsonWriterOptions Plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>One JSON document in UTF-8, ended by a line break.</summary>
    /// <param name="json">The answer.</param>
    public static byte[] Of(JsonNode json)
    {
        ArgumentNullException.ThrowIfNull(json);
        using var buffer = new MemoryStream();
        using (var writer = new Utf8JsonWriter(buffer, Plain))
        {
            json.WriteTo(writer);
        }

        buffer.WriteByte((byte)'\n');
        return buffer.ToArray();
    }
}

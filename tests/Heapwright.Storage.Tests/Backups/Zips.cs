using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heapwright.Storage.Tests.Backups;

/// <summary>Zips that were tampered with.</summary>
internal static class Zips
{
    /// <summary>The parts of a zip by name.</summary>
    public static Dictionary<string, byte[]> Parts(byte[] zip)
    {
        using var archive = new ZipArchive(new MemoryStream(zip));
        return archive.Entries.ToDictionary(
            e => e.FullName,
            e =>
            {
                using var stream = e.Open();
                var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                return bytes.ToArray();
            },
            StringComparer.Ordinal
        );
    }

    /// <summary>A zip of parts; a name may stand twice.</summary>
    public static MemoryStream Of(IEnumerable<KeyValuePair<string, byte[]>> parts)
    {
        var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in parts)
            {
                using var stream = archive.CreateEntry(name).Open();
                stream.Write(content);
            }
        }

        bytes.Position = 0;
        return bytes;
    }

    /// <summary>Changes the list of contents.</summary>
    public static void Edit(Dictionary<string, byte[]> parts, Action<JsonObject> change)
    {
        var manifest = JsonNode.Parse(parts["manifest.json"])!.AsObject();
        change(manifest);
        parts["manifest.json"] = Encoding.UTF8.GetBytes(
            manifest.ToJsonString(JsonSerializerOptions.Default)
        );
    }

    /// <summary>A zip with one database in it and a fitting list of contents.</summary>
    public static MemoryStream Around(byte[] database, int schema)
    {
        var manifest = new JsonObject
        {
            ["what"] = "heapwright-backup",
            ["form"] = 1,
            ["schema"] = schema,
            ["engine"] = "0.0.1",
            ["made_at"] = "2026-04-01T03:00:00Z",
            ["kind"] = "nightly",
            ["parts"] = new JsonArray(
                new JsonObject
                {
                    ["name"] = "heapwright.db",
                    ["bytes"] = database.Length,
                    ["sha256"] = Convert.ToHexStringLower(SHA256.HashData(database)),
                }
            ),
        };
        return Of(
            new Dictionary<string, byte[]>(StringComparer.Ordinal)
            {
                ["heapwright.db"] = database,
                ["manifest.json"] = Encoding.UTF8.GetBytes(
                    manifest.ToJsonString(JsonSerializerOptions.Default)
                ),
            }
        );
    }
}

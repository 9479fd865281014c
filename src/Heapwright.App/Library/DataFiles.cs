using System.Buffers;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Heapwright.App.Library;

/// <summary>The files of data/, which travel inside this assembly.</summary>
public static class DataFiles
{
    // What forecasts rest on.
    private static readonly string[] Modelled =
    [
        "materials.csv",
        "material-properties.csv",
        "parameters.csv",
        "containers.csv",
    ];

    private static readonly Lazy<string> Print = new(() =>
        Convert.ToHexStringLower(
            SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(Modelled.Select(Text))))
        )[..12]
    );

    /// <summary>A short hash of the data that the models rest on: it changes when they do.</summary>
    public static string Fingerprint => Print.Value;

    /// <summary>The whole text of a data file.</summary>
    /// <param name="name">A name such as <c>materials.csv</c>.</param>
    public static string Text(string name)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("data/" + name)
            ?? throw new FileNotFoundException("not among the data files: " + name, name);
        // At once and not through a reader, which would copy it twice: a short command waits for fresh memory too.
        var length = (int)stream.Length;
        var utf8 = ArrayPool<byte>.Shared.Rent(length);
        stream.ReadExactly(utf8, 0, length);
        var text = Encoding.UTF8.GetString(utf8, 0, length);
        ArrayPool<byte>.Shared.Return(utf8);
        return text;
    }

    /// <summary>The rows of a data file with a header row.</summary>
    /// <param name="name">A name such as <c>materials.csv</c>.</param>
    internal static IEnumerable<CsvRow> Csv(string name) => new CsvTable(Text(name), name).Rows;
}

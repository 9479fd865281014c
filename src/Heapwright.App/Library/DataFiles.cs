using System.Reflection;

namespace Heapwright.App.Library;

/// <summary>The files of data/, which travel inside this assembly.</summary>
public static class DataFiles
{
    /// <summary>The whole text of a data file.</summary>
    /// <param name="name">A name such as <c>materials.csv</c>.</param>
    public static string Text(string name)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("data/" + name)
            ?? throw new FileNotFoundException("not among the data files: " + name, name);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>The rows of a data file with a header row.</summary>
    /// <param name="name">A name such as <c>materials.csv</c>.</param>
    internal static IEnumerable<CsvRow> Csv(string name) => new CsvTable(Text(name), name).Rows;
}

using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the material library from data/materials.csv and data/material-properties.csv.</summary>
public static class LibraryReader
{
    private static readonly Lazy<MaterialLibrary> English = new(() =>
        new MaterialLibrary(Read(), m => GermanNames.Of(m.Id)?.All ?? [])
    );

    private static readonly Lazy<MaterialLibrary> German = new(ReadGerman);

    /// <summary>
    /// The library that ships with the program, its names in the language that is being read; read once. Ids and values
    /// are the same in every language, and so is what a search finds by exact names.
    /// </summary>
    public static MaterialLibrary Library => Languages.Code == "de" ? German.Value : English.Value;

    private static MaterialLibrary ReadGerman()
    {
        var english = English.Value;
        return new MaterialLibrary(
            english.All.Select(m =>
                GermanNames.Of(m.Id) is { } german
                    ? m with
                    {
                        Name = german.Name,
                        AlsoCalled = german.AlsoCalled,
                        Note = german.Note.Length > 0 ? german.Note : m.Note,
                    }
                    : m
            ),
            m => english.Find(m.Id) is { } e ? e.AlsoCalled.Prepend(e.Name) : []
        );
    }

    private static List<Material> Read()
    {
        var values = ReadProperties();
        var materials = new List<Material>();
        foreach (var row in DataFiles.Csv("materials.csv"))
        {
            var id = row["id"];
            var rows = values.TryGetValue(id, out var found) ? found : [];
            var properties = MaterialProperties.Later(() => Properties(rows));
            materials.Add(
                new Material
                {
                    Id = id,
                    Name = row["name"],
                    AlsoCalled = Words(row["also_called"]),
                    Group = row["group"],
                    Family = row["family"],
                    Kind = row["kind"],
                    State = row["state"],
                    Freshness = row["freshness"],
                    CountsAs = row["counts_as"],
                    Particle = row["particle"],
                    SpoilsInDays =
                        row["spoils_in_days"].Length == 0 ? null : Number(row["spoils_in_days"]),
                    SpoilsHow = row["spoils_how"],
                    Prepare = Words(row["prepare"]),
                    Cautions = Words(row["cautions"]),
                    AskGiver = Words(row["ask_giver"]),
                    Advice = row["advice"],
                    Note = row["note"],
                    Properties = properties,
                }.WithSources(() => Sources(row, rows, properties))
            );
        }

        return materials;
    }

    // Only sorted by material: what a question does not name is not read any further.
    private static Dictionary<string, List<CsvRow>> ReadProperties()
    {
        var all = new Dictionary<string, List<CsvRow>>(StringComparer.Ordinal);
        foreach (var row in DataFiles.Csv("material-properties.csv"))
        {
            var id = row["material"];
            if (!all.TryGetValue(id, out var rows))
            {
                all[id] = rows = [];
            }

            rows.Add(row);
        }

        return all;
    }

    private static MaterialProperties Properties(List<CsvRow> rows)
    {
        var properties = MaterialProperties.None;
        foreach (var row in rows)
        {
            var property =
                PropertyFacts.FromFieldName(row["property"])
                ?? throw new InvalidDataException(
                    $"material-properties.csv: {row["material"]}: unknown property {row["property"]}"
                );
            properties = properties.With(
                property,
                Spread.Of(Number(row["low"]), Number(row["typical"]), Number(row["high"]))
            );
        }

        return properties;
    }

    private static IEnumerable<PropertySource> Sources(
        CsvRow material,
        List<CsvRow> rows,
        MaterialProperties properties
    ) =>
        [
            .. rows.Select(row => new PropertySource(
                row["property"],
                row["source"],
                EvidenceKinds.Parse(row["kind"]),
                row["note"]
            )),
            // The source of the row itself says where its cautions and its advice come from.
            new PropertySource(
                "cautions",
                material["source"],
                EvidenceKinds.Parse(material["kind_of_evidence"]),
                ""
            ),
            .. DerivedValues.Sources(properties),
        ];

    private static ImmutableArray<string> Words(string cell) =>
        [
            .. cell.Split(
                ';',
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
            ),
        ];

    private static double Number(ReadOnlySpan<char> cell) =>
        double.Parse(cell, CultureInfo.InvariantCulture);
}

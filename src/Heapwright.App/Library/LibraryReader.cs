using System.Collections.Immutable;
using System.Globalization;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the material library from data/materials.csv and data/material-properties.csv.</summary>
public static class LibraryReader
{
    private static readonly Lazy<MaterialLibrary> Shipped = new(Read);

    /// <summary>The library that ships with the program; read once.</summary>
    public static MaterialLibrary Library => Shipped.Value;

    private static MaterialLibrary Read()
    {
        var values = ReadProperties();
        var materials = new List<Material>();
        using var reader = DataFiles.Csv("materials.csv");
        foreach (var row in reader)
        {
            var id = row["id"].ToString();
            var (properties, sources) = values.TryGetValue(id, out var found)
                ? found
                : (MaterialProperties.None, []);
            materials.Add(
                new Material
                {
                    Id = id,
                    Name = row["name"].ToString(),
                    AlsoCalled = Words(row["also_called"].ToString()),
                    Group = row["group"].ToString(),
                    Family = row["family"].ToString(),
                    Kind = row["kind"].ToString(),
                    State = row["state"].ToString(),
                    Freshness = row["freshness"].ToString(),
                    CountsAs = row["counts_as"].ToString(),
                    Particle = row["particle"].ToString(),
                    SpoilsInDays = row["spoils_in_days"].Span.IsEmpty
                        ? null
                        : Number(row["spoils_in_days"].Span),
                    SpoilsHow = row["spoils_how"].ToString(),
                    Prepare = Words(row["prepare"].ToString()),
                    Cautions = Words(row["cautions"].ToString()),
                    AskGiver = Words(row["ask_giver"].ToString()),
                    Advice = row["advice"].ToString(),
                    Note = row["note"].ToString(),
                    Properties = properties,
                    Sources =
                    [
                        .. sources,
                        // The source of the row itself says where its cautions and its advice come from.
                        new PropertySource(
                            "cautions",
                            row["source"].ToString(),
                            EvidenceKinds.Parse(row["kind_of_evidence"].ToString()),
                            ""
                        ),
                        .. DerivedValues.Sources(properties),
                    ],
                }
            );
        }

        return new MaterialLibrary(materials);
    }

    private static Dictionary<string, (MaterialProperties, List<PropertySource>)> ReadProperties()
    {
        var all = new Dictionary<string, (MaterialProperties Values, List<PropertySource> Sources)>(
            StringComparer.Ordinal
        );
        using var reader = DataFiles.Csv("material-properties.csv");
        foreach (var row in reader)
        {
            var id = row["material"].ToString();
            var field = row["property"].ToString();
            var property =
                PropertyFacts.FromFieldName(field)
                ?? throw new InvalidDataException(
                    $"material-properties.csv: {id}: unknown property {field}"
                );
            var value = Spread.Of(
                Number(row["low"].Span),
                Number(row["typical"].Span),
                Number(row["high"].Span)
            );
            if (!all.TryGetValue(id, out var entry))
            {
                entry = (MaterialProperties.None, []);
            }

            entry.Sources.Add(
                new PropertySource(
                    field,
                    row["source"].ToString(),
                    EvidenceKinds.Parse(row["kind"].ToString()),
                    row["note"].ToString()
                )
            );
            all[id] = (entry.Values.With(property, value), entry.Sources);
        }

        return all;
    }

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

using System.Globalization;
using System.Reflection;
using Heapwright.App.Library;
using Heapwright.Core.Materials;
using nietras.SeparatedValues;

namespace Heapwright.Validation.Independent;

/// <summary>
/// Foods from a table of analyses that the library was not made from: does the library's 5 to 95 % range of the material
/// a gardener would take it for hold them? Nitrogen is protein over 6.25 on the dry basis.
/// </summary>
public class FoodTableTests(ITestOutputHelper output)
{
    // Those outside, with what they are; data/README.md says why. Nothing else may fall out, and nothing here may be let in
    // without being taken off this list.
    private static readonly string[] Outside =
    [
        "garden cress, moisture",
        "garden cress, nitrogen",
        "rumex leaves, moisture",
        "rumex leaves, nitrogen",
        "coriander leaves, nitrogen",
        "grapes, seedless, oval, black, moisture",
        "grapes, seedless, round, black, moisture",
        "water melon, pale green, moisture",
        "lime, sweet, pulp, moisture",
        "papaya, ripe, moisture",
        "yam, elephant, nitrogen",
        "yam, wild, nitrogen",
    ];

    [Fact]
    public void Library_RangesOfMoistureAndNitrogen_HoldFoodsItWasNotMadeFrom()
    {
        var (inside, all) = (0, 0);
        var outside = new List<string>();
        foreach (var (food, material, moisture, nitrogen) in Foods())
        {
            Judge(MaterialProperty.Moisture, moisture);
            Judge(MaterialProperty.Nitrogen, nitrogen);

            void Judge(MaterialProperty property, double value)
            {
                var range = LibraryReader.Library.Find(material)!.Properties[property]!.Value;
                var holds = value >= range.Low && value <= range.High;
                all++;
                inside += holds ? 1 : 0;
                if (!holds)
                {
                    outside.Add($"{food}, {property}".ToLowerInvariant());
                    output.WriteLine(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{food}: {property} {value:F2}, {material} {range.Low} to {range.High}"
                        )
                    );
                }
            }
        }

        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{inside} of {all} inside, {100.0 * inside / all:F1} %"
            )
        );
        Assert.True(all >= 50);
        // A range from the 5th to the 95th percentile; of ranges that hold nine in ten, at least 85 % of some ninety values.
        Assert.True(inside >= 0.85 * all, $"{inside} of {all}");
        Assert.Equal(Outside, outside);
    }

    [Fact]
    public void Foods_OfTheFixture_AreNoneOfTheRowsTheLibraryWasMadeFrom()
    {
        var published = DataFiles.Text("published-feedstocks.csv");
        foreach (var code in Rows().Select(r => r.Code))
        {
            Assert.DoesNotContain($"food table code {code},", published, StringComparison.Ordinal);
        }
    }

    private static IEnumerable<(
        string Food,
        string Material,
        double Moisture,
        double Nitrogen
    )> Foods() =>
        Rows().Select(r => (r.Food, r.Material, r.Water, 100 * r.Protein / 6.25 / (100 - r.Water)));

    private static List<(
        string Code,
        string Food,
        string Material,
        double Water,
        double Protein
    )> Rows()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("ifct.csv")!;
        using var text = new StreamReader(stream);
        var lines = text.ReadToEnd().Split('\n').SkipWhile(l => l.StartsWith('#'));
        using var reader = Sep.New(',')
            .Reader(o => o with { Unescape = true })
            .FromText(string.Join('\n', lines));
        var rows = new List<(string, string, string, double, double)>();
        foreach (var row in reader)
        {
            rows.Add(
                (
                    row["code"].ToString(),
                    row["food"].ToString(),
                    row["material"].ToString(),
                    double.Parse(row["water_g"].Span, CultureInfo.InvariantCulture),
                    double.Parse(row["protein_g"].Span, CultureInfo.InvariantCulture)
                )
            );
        }

        return rows;
    }
}

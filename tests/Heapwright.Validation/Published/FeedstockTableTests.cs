using System.Globalization;
using Heapwright.App.Library;
using nietras.SeparatedValues;

namespace Heapwright.Validation.Published;

/// <summary>
/// The published tables as copied: typical nitrogen times typical C:N is a carbon content, and where it lies outside 25 to
/// 60 % the printed pair cannot be right, or is mostly shell. The list was worked out from the tables by hand.
/// </summary>
public class FeedstockTableTests
{
    private static readonly (string Name, string Source, double Carbon)[] Outside =
    [
        ("Apple filter cake", "nraes54", 15.6),
        ("Apple pomace", "jenkins_table_3_2", 14.3),
        ("Apple-processing sludge", "nraes54", 19.6),
        ("Bark (softwood)", "nraes54", 69.4),
        ("Cranberry filter cake", "nraes54", 86.8),
        ("Lumbermill waste", "nraes54", 22.1),
        ("Mussel residues", "jenkins_table_3_2", 7.9),
        ("Mussel wastes", "nraes54", 7.9),
        ("Poultry carcasses", "jenkins_table_3_2", 12.0),
        ("Poultry carcasses", "nraes54", 12.0),
        ("Poultry manure", "golueke1972", 94.5),
        ("Sawdust", "nraes54", 106.1),
        ("Softwood bark", "jenkins_table_3_2", 69.4),
        ("Telephone books", "jenkins_table_3_2", 540.4),
        ("Telephone books", "nraes54", 540.4),
    ];

    [Fact]
    public void Rows_WithImpossibleCarbon_AreExactlyTheKnownOnes()
    {
        var found = new List<(string Name, string Source, double Carbon)>();
        var rows = 0;
        using var reader = Sep.New(',')
            .Reader(o => o with { Unescape = true })
            .FromText(DataFiles.Text("published-feedstocks.csv"));
        foreach (var row in reader)
        {
            rows++;
            if (
                double.TryParse(
                    row["n_pct_db_typ"].Span,
                    CultureInfo.InvariantCulture,
                    out var nitrogen
                )
                && double.TryParse(row["cn_typ"].Span, CultureInfo.InvariantCulture, out var ratio)
                && nitrogen * ratio is < 25 or > 60
            )
            {
                found.Add(
                    (
                        row["name"].ToString(),
                        row["source"].ToString(),
                        Math.Round(nitrogen * ratio, 1)
                    )
                );
            }
        }

        Assert.Equal(330, rows);
        Assert.Equal(
            Outside
                .OrderBy(r => r.Name, StringComparer.Ordinal)
                .ThenBy(r => r.Source, StringComparer.Ordinal),
            found
                .OrderBy(r => r.Name, StringComparer.Ordinal)
                .ThenBy(r => r.Source, StringComparer.Ordinal)
        );
    }
}

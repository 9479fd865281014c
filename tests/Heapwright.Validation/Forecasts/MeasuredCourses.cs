using System.Globalization;
using Heapwright.App.Library;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Validation.Simulation;
using nietras.SeparatedValues;
using UnitsNet;

namespace Heapwright.Validation.Forecasts;

/// <summary>
/// The measured heaps: one that may be handed on comes with the tests, three are read from the folder of
/// HEAPWRIGHT_SERIES, for they may not. What their sources do not tell is ours and said here: of the first two the size
/// and the water, of the third the weights.
/// </summary>
public static class MeasuredCourses
{
    private const string FolderVariable = "HEAPWRIGHT_SERIES";

    /// <summary>Whether the folder with the other series was named.</summary>
    public static bool HasFolder => Folder is not null;

    private static string? Folder => Environment.GetEnvironmentVariable(FolderVariable);

    /// <summary>Broiler litter, read once a day, forecast three days ahead.</summary>
    public static MeasuredCourse Litter()
    {
        var middle = LitterHeap.Middle();
        return new MeasuredCourse(
            "broiler litter",
            LitterHeap.Case.Question(
                ParameterReader.Table,
                200,
                LitterHeap.Weather(),
                [.. LitterHeap.Events]
            ),
            [
                .. Enumerable
                    .Range(1, 24)
                    .Select(d => ((double)d, middle.MinBy(m => Math.Abs(m.Day - d)).Celsius)),
            ],
            [.. new[] { 7.0, 10, 13, 16, 19, 21 }.Select(d => (d, d + 3))]
        );
    }

    /// <summary>All that there are: the litter, and those of the folder, where it is named.</summary>
    public static IEnumerable<MeasuredCourse> All()
    {
        yield return Litter();
        if (HasFolder)
        {
            // Analysed at 54 and at 17 % of water, of which the second cannot rot: more was added, nobody says how much.
            yield return OfOneMaterial(
                "filter cake",
                "agro-filter-cake.csv",
                Stuff("sugar_beet_pulp", Spread.Of(48, 58, 68), Spread.Of(8, 9, 10.5))
            );
            yield return OfOneMaterial(
                "chicken manure",
                "agro-chicken-manure.csv",
                Stuff("hen_litter_shavings", Spread.Of(30, 50, 65), Spread.Of(10, 11.6, 13))
            );
            yield return Garden();
        }
    }

    // Read every other day: forecast four days ahead, for there is nothing to hold against three.
    private static MeasuredCourse OfOneMaterial(string name, string file, Ingredient stuff)
    {
        var rows = Rows(file);
        var first = rows.Min(r => r.Day);
        var days = rows.Select(r => r.Day - first).Distinct().ToArray();
        var weather = Weather.Series(
            days,
            [
                .. days.Select(d => new WeatherMoment(
                    rows.First(r => r.Day - first == d).Air!.Value,
                    1,
                    0,
                    0.7,
                    0
                )),
            ]
        );
        var side = Length.FromMeters(1.5);
        return new MeasuredCourse(
            name,
            Heap(
                Bin.Box(side, side, Length.FromMeters(1.2)),
                weather,
                stuff with
                {
                    Amount = Spread.Of(700, 1300, 2000),
                }
            ),
            [.. rows.Select(r => (r.Day - first, r.Celsius))],
            [.. days.Where(d => d >= 6 && d + 4 <= days[^1]).Select(d => (d, d + 4))]
        );
    }

    private static MeasuredCourse Garden()
    {
        var rows = Rows("garden-cage-pile1.csv").Where(r => r.Probe == "centre").ToArray();
        return new MeasuredCourse(
            "garden cage",
            Heap(
                Bin.Box(Length.FromMeters(0.91), Length.FromMeters(0.91), Length.FromMeters(0.91)),
                Weather.Steady(new WeatherMoment(28, 2, 0, 0.7, 0), 4),
                Part("leaves_mixed_dry", 30, 60, 110),
                Part("office_paper_shredded", 5, 15, 30),
                Part("grass_clippings_fresh", 80, 150, 250)
            ) with
            {
                Events =
                [
                    .. new double[] { 2, 4, 6, 7, 8, 10, 12 }.Select(d => new Turned(
                        d + 0.05,
                        0.8,
                        TurnedPart.All
                    )),
                ],
            },
            [.. rows.Select(r => (r.Day, r.Celsius))],
            [(6, 9), (8, 11), (9, 12)]
        );
    }

    private static SimulationQuestion Heap(Bin bin, Weather weather, params Ingredient[] parts) =>
        new()
        {
            Bin = bin,
            Mixture = new MixtureQuestion { Ingredients = [.. parts] },
            Parameters = ParameterReader.Table,
            Weather = weather,
            Members = 200,
        };

    private static Ingredient Part(string material, double low, double middle, double high) =>
        Of(material) with
        {
            Amount = Spread.Of(low, middle, high),
        };

    // Stuff of which water and C:N were measured; all else as in a like material.
    private static Ingredient Stuff(string like, Spread moisture, Spread ratio)
    {
        var part = Of(like);
        var carbon = part.Properties[MaterialProperty.Carbon]!.Value.Typical;
        return part with
        {
            Properties = part
                .Properties.With(MaterialProperty.Moisture, moisture)
                .With(
                    MaterialProperty.Nitrogen,
                    Spread.Of(carbon / ratio.High, carbon / ratio.Typical, carbon / ratio.Low)
                ),
        };
    }

    private static Ingredient Of(string material)
    {
        var found = LibraryReader.Library.Find(material)!;
        return new Ingredient
        {
            Name = found.Name,
            Material = found,
            Properties = found.Properties,
            Amount = Spread.Exact(1),
            Unit = UnitSize.OfMass("kg", Spread.Exact(1), false),
        };
    }

    private static List<(double Day, double Celsius, string Probe, double? Air)> Rows(string file)
    {
        var rows = new List<(double, double, string, double?)>();
        using var reader = Sep.Reader(o => o with { Unescape = true })
            .FromFile(Path.Combine(Folder!, file));
        foreach (var row in reader)
        {
            if (row["temp_c"].Span.IsEmpty)
            {
                continue;
            }

            rows.Add(
                (
                    Number(row["day"].ToString())!.Value,
                    Number(row["temp_c"].ToString())!.Value,
                    row["probe"].ToString(),
                    Number(row["ambient_c"].ToString())
                )
            );
        }

        return rows;
    }

    private static double? Number(string text) =>
        text.Length == 0 ? null : double.Parse(text, CultureInfo.InvariantCulture);
}

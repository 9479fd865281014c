using System.Collections.Immutable;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Finishing;

/// <summary>A figure of a test as it is typed.</summary>
/// <param name="Field">Its field in <c>finish</c>.</param>
/// <param name="Name">Its name on pages: the label is <c>done.field_</c> with this.</param>
public sealed record TestField(string Field, string Name)
{
    private static readonly ImmutableDictionary<HomeTest, ImmutableArray<TestField>> All =
        new Dictionary<HomeTest, ImmutableArray<TestField>>
        {
            [HomeTest.SelfHeating] = [new("ambient_c", "room"), new("highest_c", "top")],
            [HomeTest.Seeds] =
            [
                new("sown", "sown"),
                new("germinated", "up"),
                new("root_mm", "root"),
                new("control_sown", "csown"),
                new("control_germinated", "cup"),
                new("control_root_mm", "croot"),
            ],
            [HomeTest.Beans] =
            [
                new("pots", "pots"),
                new("harmed", "harmed"),
                new("control_pots", "cpots"),
                new("control_harmed", "charmed"),
                new("days", "grown"),
            ],
            [HomeTest.Bag] = [new("swells", "swells")],
            [HomeTest.Amount] = [new("volume_l", "now"), new("mass_kg", "mass")],
            [HomeTest.Lab] =
            [
                new("moisture_pct_wb", "moist"),
                new("ash_pct_db", "asha"),
                new("nitrogen_pct_db", "nitrogen"),
                new("phosphorus_pct_db", "phosphorus"),
                new("potassium_pct_db", "potassium"),
                new("ec_ds_m", "ec"),
                new("ph", "ph"),
            ],
        }.ToImmutableDictionary();

    /// <summary>Whether it is answered by yes or no.</summary>
    public bool IsFlag => Field == "swells";

    /// <summary>Whether it is of the clean soil beside it.</summary>
    public bool IsControl => Field.StartsWith("control_", StringComparison.Ordinal);

    /// <summary>The figures of a test, in the order in which they are asked for.</summary>
    /// <param name="test">The test.</param>
    public static ImmutableArray<TestField> Of(HomeTest test) => All[test];

    /// <summary>Its label with the unit of the site.</summary>
    /// <param name="show">The units of the site.</param>
    public string Label(Shown show)
    {
        ArgumentNullException.ThrowIfNull(show);
        return Say.Of(
            "done.field_" + Name,
            Field switch
            {
                "ambient_c" or "highest_c" => show.Measures.TemperatureUnit.Trim(),
                "volume_l" => show.VolumeUnit,
                "mass_kg" => show.MassUnit,
                _ => "",
            }
        );
    }

    /// <summary>The figure in the unit of its field.</summary>
    /// <param name="typed">As it was typed.</param>
    /// <param name="show">The units of the site.</param>
    public double Value(double typed, Shown show)
    {
        ArgumentNullException.ThrowIfNull(show);
        return Field switch
        {
            "ambient_c" or "highest_c" => show.FromTemperature(typed),
            "volume_l" => show.FromVolume(typed),
            "mass_kg" => show.FromMass(typed),
            _ => typed,
        };
    }
}

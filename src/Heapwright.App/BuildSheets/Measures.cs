using System.Globalization;
using Heapwright.App.Texts;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.App.BuildSheets;

/// <summary>Lengths and volumes as the reader of a sheet measures them.</summary>
public sealed record Measures
{
    private Measures(bool inches) => InInches = inches;

    /// <summary>Centimetres and litres.</summary>
    public static Measures Metric { get; } = new(inches: false);

    /// <summary>Inches, feet and US gallons.</summary>
    public static Measures UsCustomary { get; } = new(inches: true);

    /// <summary>Whether lengths are in inches and feet, and volumes in US gallons.</summary>
    public bool InInches { get; }

    /// <summary>The number format; a point unless told.</summary>
    public CultureInfo Culture { get; init; } = CultureInfo.InvariantCulture;

    /// <summary>A thickness or height with its unit, to the whole centimetre or half inch.</summary>
    /// <param name="length">The length.</param>
    public string Short(Length length) =>
        InInches
            ? (Math.Round(length.Inches * 2) / 2).ToString("0.#", Culture) + " in"
            : Digits(length.Centimeters, length.Centimeters < 3 ? "0.#" : "0") + " cm";

    /// <summary>The side of a bin with its unit.</summary>
    /// <param name="length">The length.</param>
    public string Long(Length length) =>
        InInches ? Digits(length.Feet, "0.#") + " ft" : Digits(length.Meters, "0.##") + " m";

    /// <summary>A volume of water or of a heap with its unit.</summary>
    /// <param name="volume">The volume.</param>
    public string Volume(Volume volume) =>
        InInches ? Digits(volume.UsGallons, volume.UsGallons < 20 ? "0.#" : "0") + " gal"
        : volume.Liters >= 1000 ? Digits(volume.CubicMeters, "0.##") + " m³"
        : Digits(volume.Liters, volume.Liters < 20 ? "0.#" : "0") + " l";

    /// <summary>The volume of a heap with its unit.</summary>
    /// <param name="volume">The volume.</param>
    public string Heap(Volume volume) =>
        InInches
            ? Digits(volume.CubicFeet, "0.#") + " ft³"
            : Digits(volume.CubicMeters, "0.##") + " m³";

    /// <summary>The sentence for a reason, its lengths and volumes in these measures.</summary>
    /// <param name="reason">The reason.</param>
    public string Say(Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        object[] values =
        [
            .. reason.Values.Select(v =>
                v switch
                {
                    Length length => length.Meters >= 1 ? Long(length) : Short(length),
                    Volume volume => Volume(volume),
                    _ => v,
                }
            ),
        ];
        return Words.Of(reason.Code, Culture, values);
    }

    private string Digits(double value, string format) => value.ToString(format, Culture);
}

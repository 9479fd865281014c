using System.Globalization;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;
using NodaTime;

namespace Heapwright.Web.Showing;

/// <summary>Quantities as this site's people read them: their units, their number format, no more figures than are known.</summary>
/// <param name="Units">The units.</param>
/// <param name="Culture">The number format; days are written as the language has them.</param>
public sealed record Shown(DisplayUnits Units, CultureInfo Culture)
{
    /// <summary>The same measures for what is not shown by a page.</summary>
    public Measures Measures => new(Units, Culture);

    /// <summary>A volume, such as <c>340 L</c>.</summary>
    /// <param name="litres">Litres.</param>
    public string Volume(double litres) => Measures.Litres(litres);

    /// <summary>A volume between two ends, such as <c>210–340 L</c>; one figure where the ends look the same.</summary>
    /// <param name="low">Litres.</param>
    /// <param name="high">Litres.</param>
    public string Volume(double low, double high) => Measures.Litres(low, high);

    /// <summary>Water as it is poured; empty where it rounds to none.</summary>
    /// <param name="litres">Litres.</param>
    public string Water(double litres) => Measures.Water(litres);

    /// <summary>A mass, such as <c>45 kg</c>.</summary>
    /// <param name="kilograms">Kilograms.</param>
    public string Mass(double kilograms) => Measures.Kilograms(kilograms);

    /// <summary>A mass between two ends.</summary>
    /// <param name="low">Kilograms.</param>
    /// <param name="high">Kilograms.</param>
    public string Mass(double low, double high) => Measures.Kilograms(low, high);

    /// <summary>A length, such as <c>1.2 m</c> or <c>3.9 ft</c>.</summary>
    /// <param name="metres">Metres.</param>
    public string Length(double metres) => Measures.Long(UnitsNet.Length.FromMeters(metres));

    /// <summary>A length without its unit, in the unit of this site.</summary>
    /// <param name="metres">Metres.</param>
    public string LengthFigure(double metres) => InLength(metres).ToString("0.##", Culture);

    /// <summary>A thickness, such as <c>12 cm</c> or <c>5 in</c>.</summary>
    /// <param name="centimetres">Centimetres.</param>
    public string Thickness(double centimetres) =>
        Measures.Short(UnitsNet.Length.FromCentimeters(centimetres));

    /// <summary>A temperature, such as <c>55 °C</c>.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public string Temperature(double celsius) => Measures.Celsius(celsius);

    /// <summary>The name of a property with its unit.</summary>
    /// <param name="property">The property.</param>
    public string Name(MaterialProperty property) =>
        Words.Of("materials.value_" + PropertyNames.Code(property), null, Measures.DensityUnit);

    /// <summary>A value of a property in the unit of <see cref="Name"/>.</summary>
    /// <param name="property">The property.</param>
    /// <param name="value">The value.</param>
    public Spread Value(MaterialProperty property, Spread value) =>
        property == MaterialProperty.BulkDensity ? Measures.InDensity(value) : value;

    /// <summary>A plain number with about three figures.</summary>
    /// <param name="value">The number.</param>
    public string Number(double value) => App.Contract.Figures.One(value, Culture);

    /// <summary>A number with as many places as it deserves.</summary>
    /// <param name="value">The number.</param>
    public string Rounded(double value) => Measures.Rounded(value);

    /// <summary>A share in percent, without figures that are not known.</summary>
    /// <param name="share">0 to 1.</param>
    public string Chance(double share) =>
        share >= 0.995 ? Say.Of("common.chance_sure")
        : share <= 0.005 ? Say.Of("common.chance_none")
        : Say.Of("common.chance_of_ten", Math.Clamp(Math.Round(share * 10), 1, 9));

    /// <summary>An amount in a container or unit, such as <c>3 wheelbarrows</c>.</summary>
    /// <param name="value">How many.</param>
    /// <param name="unit">The unit as in questions.</param>
    public string Amount(double value, string unit) =>
        UnitWords.Amount(value, UnitWords.Named(unit), Culture);

    /// <summary>The number of an amount alone, in halves and quarters where it is one.</summary>
    /// <param name="value">How many.</param>
    /// <param name="unit">The unit as in questions.</param>
    public string Count(double value, string unit) =>
        UnitWords.Number(value, UnitWords.Named(unit), Culture);

    /// <summary>The name of a unit for so many of it.</summary>
    /// <param name="unit">The unit as in questions.</param>
    /// <param name="value">How many.</param>
    public static string Unit(string unit, double value = 1) =>
        UnitWords.Name(value, UnitWords.Named(unit));

    /// <summary>A day.</summary>
    /// <param name="day">The day.</param>
    public string Day(LocalDate day) => Words.Day(day);

    /// <summary>A moment at the site.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The site's zone.</param>
    public string Moment(Instant moment, DateTimeZone zone) =>
        Words.Moment(moment.InZone(zone).LocalDateTime);

    /// <summary>How long ago in days, in words.</summary>
    /// <param name="days">Days; 0 is today.</param>
    public static string Ago(int days) =>
        days switch
        {
            0 => Say.Of("common.today"),
            1 => Say.Of("common.yesterday"),
            _ => Say.Of("common.days_ago", days),
        };

    /// <summary>The unit of volume, as it is written.</summary>
    public string VolumeUnit => Measures.VolumeUnit;

    /// <summary>The unit of mass as it is written.</summary>
    public string MassUnit => Measures.Units.Mass;

    /// <summary>A volume in the unit of this site, as a number.</summary>
    /// <param name="litres">Litres.</param>
    public double InVolume(double litres) => Measures.InVolume(litres);

    /// <summary>Litres of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromVolume(double value) => Measures.FromVolume(value);

    /// <summary>A temperature in the unit of this site, as a number.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public double InTemperature(double celsius) => Measures.InTemperature(celsius);

    /// <summary>Degrees Celsius of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromTemperature(double value) =>
        Units.Temperature == "f"
            ? UnitsNet.Temperature.FromDegreesFahrenheit(value).DegreesCelsius
            : value;

    /// <summary>Kilograms of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromMass(double value) => Measures.FromMass(value);

    /// <summary>A length in the unit of this site, as a number.</summary>
    /// <param name="metres">Metres.</param>
    public double InLength(double metres) =>
        Units.Length == "ft" ? UnitsNet.Length.FromMeters(metres).Feet : metres;

    /// <summary>Metres of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromLength(double value) =>
        Units.Length == "ft" ? UnitsNet.Length.FromFeet(value).Meters : value;
}

using System.Globalization;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.Core.Amounts;
using Heapwright.Core.Quantities;
using NodaTime;

namespace Heapwright.Web.Showing;

/// <summary>Quantities as this site's people read them: their units, their number format, no more figures than are known.</summary>
/// <param name="Units">The units.</param>
/// <param name="Culture">The number and date format.</param>
public sealed record Shown(DisplayUnits Units, CultureInfo Culture)
{
    /// <summary>A volume, such as <c>340 L</c>.</summary>
    /// <param name="litres">Litres.</param>
    public string Volume(double litres) => $"{VolumeFigure(litres)} {VolumeUnit}";

    /// <summary>A volume between two ends, such as <c>210–340 L</c>; one figure where the ends look the same.</summary>
    /// <param name="low">Litres.</param>
    /// <param name="high">Litres.</param>
    public string Volume(double low, double high) =>
        Between(VolumeFigure(low), VolumeFigure(high), VolumeUnit);

    /// <summary>A mass, such as <c>45 kg</c>.</summary>
    /// <param name="kilograms">Kilograms.</param>
    public string Mass(double kilograms) => $"{MassFigure(kilograms)} {Units.Mass}";

    /// <summary>A mass between two ends.</summary>
    /// <param name="low">Kilograms.</param>
    /// <param name="high">Kilograms.</param>
    public string Mass(double low, double high) =>
        Between(MassFigure(low), MassFigure(high), Units.Mass);

    /// <summary>A length, such as <c>1.2 m</c> or <c>3.9 ft</c>.</summary>
    /// <param name="metres">Metres.</param>
    public string Length(double metres) => $"{LengthFigure(metres)} {Units.Length}";

    /// <summary>A length without its unit, in the unit of this site.</summary>
    /// <param name="metres">Metres.</param>
    public string LengthFigure(double metres) => InLength(metres).ToString("0.##", Culture);

    /// <summary>A thickness, such as <c>12 cm</c> or <c>5 in</c>.</summary>
    /// <param name="centimetres">Centimetres.</param>
    public string Thickness(double centimetres) =>
        Units.Length == "ft"
            ? Rounded(UnitsNet.Length.FromCentimeters(centimetres).Inches) + " in"
            : Rounded(centimetres) + " cm";

    /// <summary>A temperature, such as <c>55 °C</c>.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public string Temperature(double celsius) =>
        Units.Temperature == "f"
            ? UnitsNet
                .Temperature.FromDegreesCelsius(celsius)
                .DegreesFahrenheit.ToString("0", Culture) + " °F"
            : celsius.ToString("0", Culture) + " °C";

    /// <summary>A plain number with about three figures.</summary>
    /// <param name="value">The number.</param>
    public string Number(double value) => App.Contract.Figures.One(value, Culture);

    /// <summary>A number to whole ones, or to a half below ten.</summary>
    /// <param name="value">The number.</param>
    public string Rounded(double value) =>
        Math.Abs(value) < 10
            ? (Math.Round(value * 2) / 2).ToString("0.#", Culture)
            : Math.Round(value).ToString("#,0", Culture);

    /// <summary>A share in percent, without figures that are not known.</summary>
    /// <param name="share">0 to 1.</param>
    public string Chance(double share) =>
        share >= 0.995 ? Say.Of("common.chance_sure")
        : share <= 0.005 ? Say.Of("common.chance_none")
        : Say.Of("common.chance_of_ten", Math.Clamp(Math.Round(share * 10), 1, 9));

    /// <summary>An amount in a container or unit, such as <c>3 wheelbarrows</c>.</summary>
    /// <param name="value">How many.</param>
    /// <param name="unit">The unit as in questions.</param>
    public string Amount(double value, string unit) => UnitWords.Amount(value, Size(unit), Culture);

    /// <summary>The number of an amount alone, in halves and quarters where it is one.</summary>
    /// <param name="value">How many.</param>
    /// <param name="unit">The unit as in questions.</param>
    public string Count(double value, string unit) => UnitWords.Number(value, Size(unit), Culture);

    /// <summary>The name of a unit for so many of it.</summary>
    /// <param name="unit">The unit as in questions.</param>
    /// <param name="value">How many.</param>
    public static string Unit(string unit, double value = 1) => UnitWords.Name(value, Size(unit));

    /// <summary>A day.</summary>
    /// <param name="day">The day.</param>
    public string Day(LocalDate day) => day.ToString("d MMM uuuu", DayCulture);

    /// <summary>A moment at the site.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The site's zone.</param>
    public string Moment(Instant moment, DateTimeZone zone) =>
        moment.InZone(zone).LocalDateTime.ToString("d MMM, HH:mm", DayCulture);

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
    public string VolumeUnit => Say.Of("units." + Units.Volume);

    /// <summary>A volume in the unit of this site, as a number.</summary>
    /// <param name="litres">Litres.</param>
    public double InVolume(double litres) =>
        Units.Volume switch
        {
            "gal_us" => UnitsNet.Volume.FromLiters(litres).UsGallons,
            "gal_uk" => UnitsNet.Volume.FromLiters(litres).ImperialGallons,
            _ => litres,
        };

    /// <summary>Litres of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromVolume(double value) =>
        Units.Volume switch
        {
            "gal_us" => UnitsNet.Volume.FromUsGallons(value).Liters,
            "gal_uk" => UnitsNet.Volume.FromImperialGallons(value).Liters,
            _ => value,
        };

    /// <summary>A temperature in the unit of this site, as a number.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public double InTemperature(double celsius) =>
        Units.Temperature == "f"
            ? UnitsNet.Temperature.FromDegreesCelsius(celsius).DegreesFahrenheit
            : celsius;

    /// <summary>Degrees Celsius of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromTemperature(double value) =>
        Units.Temperature == "f"
            ? UnitsNet.Temperature.FromDegreesFahrenheit(value).DegreesCelsius
            : value;

    /// <summary>Kilograms of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromMass(double value) =>
        Units.Mass == "lb" ? UnitsNet.Mass.FromPounds(value).Kilograms : value;

    /// <summary>A length in the unit of this site, as a number.</summary>
    /// <param name="metres">Metres.</param>
    public double InLength(double metres) =>
        Units.Length == "ft" ? UnitsNet.Length.FromMeters(metres).Feet : metres;

    /// <summary>Metres of a number in the unit of this site.</summary>
    /// <param name="value">The number.</param>
    public double FromLength(double value) =>
        Units.Length == "ft" ? UnitsNet.Length.FromFeet(value).Meters : value;

    // Only the name matters here, so the size of a container may be anything.
    private static UnitSize Size(string unit) =>
        MeasureUnits.Find(unit) ?? UnitSize.OfVolume(unit, Spread.Exact(1), wholeByDefault: true);

    // The language of the pages is English whatever the number format, and so are the names of months.
    private static CultureInfo DayCulture => CultureInfo.InvariantCulture;

    private string VolumeFigure(double litres) => Rounded(InVolume(litres));

    private string MassFigure(double kilograms) =>
        Rounded(Units.Mass == "lb" ? UnitsNet.Mass.FromKilograms(kilograms).Pounds : kilograms);

    private static string Between(string low, string high, string unit) =>
        low == high ? $"{low} {unit}" : $"{low}–{high} {unit}";
}

using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.Core.Amounts;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.App.Texts;

/// <summary>
/// Quantities as a reader measures them, the same on pages, on paper and on the command line: the reader's units and
/// number format, and no more figures than are known.
/// </summary>
/// <param name="Units">The units.</param>
/// <param name="Culture">The number format.</param>
public sealed record Measures(DisplayUnits Units, CultureInfo Culture)
{
    /// <summary>°C, litres, kilograms, metres; numbers as the language that is being read writes them.</summary>
    public static Measures Metric => new(DisplayUnits.Metric, Languages.Now);

    /// <summary>°F, US gallons, pounds, feet and inches; numbers as the language that is being read writes them.</summary>
    public static Measures UsCustomary => new(DisplayUnits.American, Languages.Now);

    /// <summary>°C, imperial gallons, pounds, feet and inches; numbers as the language that is being read writes them.</summary>
    public static Measures Imperial => new(DisplayUnits.British, Languages.Now);

    /// <summary>The names of the three sets of units.</summary>
    public static IReadOnlyList<string> Names { get; } = ["metric", "us", "uk"];

    /// <summary>Whether lengths are in inches and feet.</summary>
    public bool InInches => Units.Length == "ft";

    /// <summary>Whether temperatures are in degrees Fahrenheit.</summary>
    public bool InFahrenheit => Units.Temperature == "f";

    /// <summary>The set of units of a name; null if there is none.</summary>
    /// <param name="name">metric, us or uk.</param>
    public static Measures? Find(string name) =>
        name switch
        {
            "metric" => Metric,
            "us" => UsCustomary,
            "uk" => Imperial,
            _ => null,
        };

    /// <summary>A thickness or height: whole centimetres, below 3 cm halves; half inches.</summary>
    /// <param name="length">The length.</param>
    public string Short(Length length) => Short(length.Centimeters);

    /// <summary>A thickness or height: whole centimetres, below 3 cm halves; half inches.</summary>
    /// <param name="centimetres">The length in centimetres.</param>
    public string Short(double centimetres) =>
        InInches ? Halves(centimetres / 2.54, "0.#") + " in"
        : centimetres < 2.75 ? Halves(centimetres, "0.#") + " cm"
        : centimetres.ToString("0", Culture) + " cm";

    /// <summary>The side of a bin, such as <c>1.2 m</c> or <c>3.9 ft</c>.</summary>
    /// <param name="length">The length.</param>
    public string Long(Length length) =>
        (InInches ? length.Feet.ToString("0.#", Culture) : length.Meters.ToString("0.##", Culture))
        + " "
        + Units.Length;

    /// <summary>A depth with its range, in centimetres or inches.</summary>
    /// <param name="centimetres">The depth in centimetres.</param>
    public string LengthRange(Spread centimetres) =>
        $"{Figures.Range(InInches ? Each(centimetres, c => c / 2.54) : centimetres, Culture)} {(InInches ? "in" : "cm")}";

    /// <summary>An area as a number in square metres, or square feet where lengths are in feet.</summary>
    /// <param name="squareMetres">The area in square metres.</param>
    public Spread InArea(Spread squareMetres) =>
        InInches ? Each(squareMetres, a => a / (0.3048 * 0.3048)) : squareMetres;

    /// <summary>A volume, to the whole litre or gallon and below ten to the half.</summary>
    /// <param name="volume">The volume.</param>
    public string Volume(Volume volume) => Litres(volume.Liters);

    /// <summary>A volume, to the whole litre or gallon and below ten to the half.</summary>
    /// <param name="litres">Litres.</param>
    public string Litres(double litres) => $"{Rounded(InVolume(litres))} {VolumeUnit}";

    /// <summary>A volume between two ends; one figure where the ends look the same.</summary>
    /// <param name="low">Litres at the low end.</param>
    /// <param name="high">Litres at the high end.</param>
    public string Litres(double low, double high) =>
        Between(Rounded(InVolume(low)), Rounded(InVolume(high)), VolumeUnit);

    /// <summary>A volume with its range, such as <c>361 (319–404) L</c>.</summary>
    /// <param name="litres">The volume in litres.</param>
    public string VolumeRange(Spread litres) =>
        $"{Figures.Range(Each(litres, InVolume), Culture)} {VolumeUnit}";

    /// <summary>A volume to three figures, as somebody gave it.</summary>
    /// <param name="litres">Litres.</param>
    public string LitresAsGiven(double litres) =>
        $"{Figures.One(InVolume(litres), Culture)} {VolumeUnit}";

    /// <summary>A volume to the tenth, as closed forms are printed.</summary>
    /// <param name="litres">Litres.</param>
    public string LitresToTheTenth(double litres) =>
        $"{InVolume(litres).ToString("0.0", Culture)} {VolumeUnit}";

    /// <summary>
    /// Water as it is poured: half litres or quarter gallons (a quart), whole ones from ten on. Empty where there is so
    /// little that it rounds to none.
    /// </summary>
    /// <param name="litres">Litres of water.</param>
    public string Water(double litres)
    {
        var amount = InVolume(litres);
        var step =
            amount >= 10 ? 1
            : Units.Volume == "l" ? 0.5
            : 0.25;
        var poured = Math.Round(amount / step, MidpointRounding.AwayFromZero) * step;
        return poured > 0 ? $"{poured.ToString("#,0.##", Culture)} {VolumeUnit}" : "";
    }

    /// <summary>The volume of a heap, in cubic metres or cubic feet.</summary>
    /// <param name="volume">The volume.</param>
    public string Heap(Volume volume) => Heap(volume.CubicMeters);

    /// <summary>The volume of a heap, in cubic metres or cubic feet.</summary>
    /// <param name="cubicMetres">The volume in cubic metres.</param>
    public string Heap(double cubicMetres) =>
        InInches
            ? (cubicMetres / (0.3048 * 0.3048 * 0.3048)).ToString("0.#", Culture) + " ft³"
            : cubicMetres.ToString("0.##", Culture) + " m³";

    /// <summary>A mass, to the whole kilogram or pound, below ten to the half, below one to the hundredth.</summary>
    /// <param name="mass">The mass.</param>
    public string Mass(Mass mass) => Kilograms(mass.Kilograms);

    /// <summary>A mass, to the whole kilogram or pound, below ten to the half, below one to the hundredth.</summary>
    /// <param name="kilograms">Kilograms.</param>
    public string Kilograms(double kilograms) => $"{Rounded(InMass(kilograms))} {Units.Mass}";

    /// <summary>A mass between two ends; one figure where the ends look the same.</summary>
    /// <param name="low">Kilograms at the low end.</param>
    /// <param name="high">Kilograms at the high end.</param>
    public string Kilograms(double low, double high) =>
        Between(Rounded(InMass(low)), Rounded(InMass(high)), Units.Mass);

    /// <summary>A mass with its range, such as <c>35 (24–51) kg</c>.</summary>
    /// <param name="kilograms">The mass in kilograms.</param>
    public string MassRange(Spread kilograms) =>
        $"{Figures.Range(Each(kilograms, InMass), Culture)} {Units.Mass}";

    /// <summary>A mass to three figures, as somebody gave it or as it was worked out.</summary>
    /// <param name="kilograms">Kilograms.</param>
    public string KilogramsAsGiven(double kilograms) =>
        $"{Figures.One(InMass(kilograms), Culture)} {Units.Mass}";

    /// <summary>The unit of a weight by volume: kg/m³ or lb/yd³.</summary>
    public string DensityUnit => Units.Mass == "lb" ? "lb/yd³" : "kg/m³";

    /// <summary>A weight by volume in <see cref="DensityUnit"/>.</summary>
    /// <param name="kilogramsPerCubicMetre">The weight in kg/m³.</param>
    public Spread InDensity(Spread kilogramsPerCubicMetre) =>
        Units.Mass == "lb"
            ? Each(kilogramsPerCubicMetre, d => InMass(d) * Size("yd3") / Size("m3"))
            : kilogramsPerCubicMetre;

    /// <summary>A temperature to the whole degree.</summary>
    /// <param name="temperature">The temperature.</param>
    public string Temperature(Temperature temperature) => Celsius(temperature.DegreesCelsius);

    /// <summary>A temperature to the whole degree.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public string Celsius(double celsius) =>
        InTemperature(celsius).ToString("0", Culture) + TemperatureUnit;

    /// <summary>A temperature as a thermometer shows it, to the tenth of a degree.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public string CelsiusAsRead(double celsius) =>
        InTemperature(celsius).ToString("0.#", Culture) + TemperatureUnit;

    /// <summary>A range of temperatures.</summary>
    /// <param name="celsius">Degrees Celsius.</param>
    public string CelsiusRange(Spread celsius) =>
        Figures.Range(Each(celsius, InTemperature), Culture) + TemperatureUnit;

    /// <summary>A difference of temperatures, in K, in the reader's unit.</summary>
    public string TemperatureDifference(double kelvin) =>
        (InFahrenheit ? kelvin * 1.8 : kelvin).ToString("0.#", Culture) + TemperatureUnit;

    /// <summary>A temperature in degrees Celsius, as a number in the reader's unit.</summary>
    public double InTemperature(double celsius) => InFahrenheit ? (celsius * 1.8) + 32 : celsius;

    /// <summary>The unit of temperature with its space.</summary>
    public string TemperatureUnit => InFahrenheit ? " °F" : " °C";

    /// <summary>The unit of volume as it is written.</summary>
    public string VolumeUnit => Words.Of("units." + Units.Volume);

    /// <summary>A volume in the reader's unit, as a number.</summary>
    /// <param name="litres">Litres.</param>
    public double InVolume(double litres) =>
        Units.Volume == "l" ? litres : litres / Size(Units.Volume);

    /// <summary>Litres of a number in the reader's unit of volume.</summary>
    /// <param name="value">The number.</param>
    public double FromVolume(double value) =>
        Units.Volume == "l" ? value : value * Size(Units.Volume);

    /// <summary>A mass in the reader's unit, as a number.</summary>
    /// <param name="kilograms">Kilograms.</param>
    public double InMass(double kilograms) =>
        Units.Mass == "kg" ? kilograms : kilograms / Size(Units.Mass);

    /// <summary>Kilograms of a number in the reader's unit of mass.</summary>
    /// <param name="value">The number.</param>
    public double FromMass(double value) => Units.Mass == "kg" ? value : value * Size(Units.Mass);

    /// <summary>
    /// The sentence for a reason, its quantities in these measures; that for one of something where there is such a one and
    /// a value is one.
    /// </summary>
    /// <param name="reason">The reason.</param>
    public string Say(Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        object[] values = [.. reason.Values.Select(v => Put(v, reason.Code))];
        return
            reason.Values.Any(v => v is 1.0)
            && Words.TryOf(reason.Code + Languages.End(1), Culture, values) is { } one
            ? one
            : Words.Of(reason.Code, Culture, values);
    }

    private object Put(object value, string code) =>
        value switch
        {
            // What was seen is told by its code.
            string seen when code.StartsWith("materials.guess_", StringComparison.Ordinal) =>
                Words.TryOf("materials.seen_" + seen) ?? seen,
            Length length => length.Meters >= 1 ? Long(length) : Short(length),
            Volume volume => Volume(volume),
            Mass mass => Mass(mass),
            Temperature temperature => Temperature(temperature),
            _ => value,
        };

    // Not through UnitsNet: it takes long to start, and every answer shows some volume.
    private static double Size(string unit) => MeasureUnits.Find(unit)!.Size.Typical;

    /// <summary>A number without digits that nobody can measure, and never 0 for what is little.</summary>
    /// <param name="value">The number.</param>
    public string Rounded(double value) =>
        Math.Abs(value) switch
        {
            0 => "0",
            < 1 => value.ToString("0.##", Culture),
            < 10 => Halves(value, "0.#"),
            _ => Math.Round(value).ToString("#,0", Culture),
        };

    private string Halves(double value, string format) =>
        (Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2).ToString(format, Culture);

    private static string Between(string low, string high, string unit) =>
        low == high ? $"{low} {unit}" : $"{low}–{high} {unit}";

    private static Spread Each(Spread value, Func<double, double> convert) =>
        Spread.Of(convert(value.Low), convert(value.Typical), convert(value.High));
}

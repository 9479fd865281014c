using Heapwright.Core.Simulation;

namespace Heapwright.App.Contract;

/// <summary>Reads the weather of <c>simulate</c>: a mean with a daily swing, or a series by the hour.</summary>
internal sealed class SimulateWeather(SimulateLimits limits, Assumptions assumptions)
{
    private const double UsualAir = 15;
    private const double UsualSwing = 5;
    private const double UsualWind = 1;
    private const double Noon = 12;

    private static readonly string[] Plain = ["air_c", "swing_c", "wind_m_s", "rain_mm_day"];

    /// <summary>The weather.</summary>
    /// <param name="input">The field <c>weather</c>, or null.</param>
    /// <param name="start">The field <c>start</c>, or null.</param>
    /// <param name="days">How long the heap is followed.</param>
    /// <exception cref="InputProblem">Something is wrong in it.</exception>
    public Weather Read(Input? input, Input? start, double days)
    {
        var begun = start is null ? (DateTimeOffset?)null : StartTime.Read(start);
        var fields = input?.Fields([.. Plain, "hourly", "hourly_csv", "air_error_c"]);
        var error = fields?["air_error_c"]?.Number(0, 10) ?? 0;
        var series = fields?["hourly"] ?? fields?["hourly_csv"];
        if (series is null)
        {
            return Usual(Steady(fields, begun), error);
        }

        foreach (var other in Plain.Append("hourly"))
        {
            if (fields![other] is { } both && both.Place != series.Place)
            {
                throw both.Problem(
                    $"stands beside \"{(fields["hourly"] is null ? "hourly_csv" : "hourly")}\"; give a series or means, not both"
                );
            }
        }

        if (fields!["hourly"] is not null && fields["hourly_csv"] is { } file)
        {
            throw file.Problem("stands beside \"hourly\"; one of the two is allowed");
        }

        return Usual(
            Series(
                fields["hourly"] is { } rows ? HourlyWeather.OfRows(rows) : Table(series),
                begun,
                days
            ),
            error
        );
    }

    // A weather that says how far it may be off is what is usual, not what was measured.
    private Weather Usual(Weather weather, double error)
    {
        if (error <= 0)
        {
            return weather;
        }

        assumptions.Say("simulate.air_usual", assumptions.Measures.TemperatureDifference(error));
        return weather.AsUsual(error);
    }

    private HourlyWeather Table(Input name)
    {
        var path = name.Text(400);
        return limits.ReadTable is { } read
            ? HourlyWeather.OfTable(read(name, path), path)
            : throw name.Problem(
                "names a file, and only the command line reads files; give the rows themselves under \"hourly\""
            );
    }

    private Weather Steady(InputFields? fields, DateTimeOffset? begun)
    {
        double Given(string name, double low, double high, double usual) =>
            fields?[name]?.Number(low, high) ?? usual;
        var air = Given("air_c", -40, 50, UsualAir);
        var swing = Given("swing_c", 0, 25, UsualSwing);
        var wind = Given("wind_m_s", 0, 30, UsualWind);
        var rain = Given("rain_mm_day", 0, 300, 0);
        if (fields?["air_c"] is null)
        {
            assumptions.Say("simulate.air_assumed", assumptions.Measures.Celsius(air));
        }

        if (fields?["swing_c"] is null)
        {
            assumptions.Say(
                "simulate.swing_assumed",
                assumptions.Measures.TemperatureDifference(swing)
            );
        }

        if (fields?["wind_m_s"] is null)
        {
            assumptions.Say("simulate.wind_assumed", wind);
        }

        if (fields?["rain_mm_day"] is null)
        {
            assumptions.Say("simulate.rain_assumed");
        }

        if (begun is null)
        {
            assumptions.Say("simulate.noon_assumed");
        }

        assumptions.Say("simulate.humidity_assumed", HourlyWeather.UsualHumidity);
        assumptions.Say("simulate.sun_assumed");
        return Weather.Steady(
            new WeatherMoment(air, wind, rain, HourlyWeather.UsualHumidity / 100, 0),
            swing,
            begun is { } time ? StartTime.HourOfDay(time) : Noon
        );
    }

    private Weather Series(HourlyWeather series, DateTimeOffset? begun, double days)
    {
        if (begun is null && series.First is { } first)
        {
            assumptions.Say(
                "simulate.first_row_assumed",
                first.ToString(
                    "yyyy-MM-dd HH:mm",
                    System.Globalization.CultureInfo.InvariantCulture
                )
            );
        }

        var (weather, from, to) = series.ToWeather(begun ?? series.First ?? default, days);
        if (from > 1.0 / 24 || to < days - 1.0 / 24)
        {
            assumptions.Say("simulate.series_short", from, to);
        }

        foreach (var column in series.Absent)
        {
            assumptions.Say(
                column switch
                {
                    "wind_m_s" => "simulate.wind_assumed",
                    "rain_mm" => "simulate.rain_assumed",
                    "humidity_pct" => "simulate.humidity_assumed",
                    _ => "simulate.sun_assumed",
                },
                column == "wind_m_s" ? UsualWind : HourlyWeather.UsualHumidity
            );
        }

        return weather;
    }
}

namespace Heapwright.Core.Simulation;

/// <summary>The weather round a heap: a mean with a daily swing, or a series hour by hour.</summary>
public sealed class Weather
{
    private const double WarmestHour = 15;
    private readonly WeatherMoment mean;
    private readonly double swing;
    private readonly double startHour;
    private readonly double[] days;
    private readonly WeatherMoment[] moments;

    private Weather(
        WeatherMoment mean,
        double swing,
        double startHour,
        double[] days,
        WeatherMoment[] moments
    )
    {
        this.mean = mean;
        this.swing = swing;
        this.startHour = startHour;
        this.days = days;
        this.moments = moments;
        StartAir = MeanAir = days.Length == 0 ? mean.Air : moments.Average(m => m.Air);
    }

    /// <summary>Mean air temperature, °C.</summary>
    public double MeanAir { get; }

    /// <summary>Air temperature at which matter goes in where nothing is said of it, °C.</summary>
    public double StartAir { get; private init; }

    /// <summary>
    /// Standard deviation by which the air may lie off this weather from year to year, K: all the time by the same amount
    /// in one member of an ensemble. 0 where the weather is taken as it is.
    /// </summary>
    public double AirError { get; private init; }

    /// <summary>Ground temperature at half a metre, °C: nearer to 10 °C than the air.</summary>
    /// <remarks>An estimate of our own.</remarks>
    public double Ground => Math.Max(1, (0.7 * MeanAir) + 3);

    /// <summary>A mean with a daily swing, warmest at 15:00.</summary>
    /// <param name="mean">The means.</param>
    /// <param name="swing">Half the difference between warmest and coldest, K.</param>
    /// <param name="startHour">Hour of the day at which the heap is built.</param>
    public static Weather Steady(WeatherMoment mean, double swing, double startHour = 12) =>
        new(mean, swing, startHour, [], []);

    /// <summary>A series, linear between its moments and constant beyond its ends.</summary>
    /// <param name="days">Shape [moment]: days since building, ascending.</param>
    /// <param name="moments">Shape [moment].</param>
    public static Weather Series(double[] days, WeatherMoment[] moments)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(moments);
        if (days.Length == 0 || days.Length != moments.Length)
        {
            throw new ArgumentException("a series needs a day for each moment", nameof(days));
        }

        return new Weather(moments[0], 0, 0, days, moments);
    }

    /// <summary>The same as what is usual at the time of year and not as what was measured.</summary>
    /// <param name="error">Standard deviation by which the air may lie off it, K; 0 or more.</param>
    /// <returns>The weather; what goes in has the mean of the air of its first day.</returns>
    public Weather AsUsual(double error)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(error);
        var first = Enumerable.Range(0, 24).Average(h => At(h / 24.0).Air);
        return new Weather(mean, swing, startHour, days, moments)
        {
            AirError = error,
            StartAir = first,
        };
    }

    /// <summary>The weather at a time.</summary>
    /// <param name="day">Days since building.</param>
    public WeatherMoment At(double day)
    {
        if (days.Length == 0)
        {
            var hour = startHour + (24 * day);
            return mean with
            {
                Air = mean.Air + (swing * Math.Cos(2 * Math.PI * (hour - WarmestHour) / 24)),
            };
        }

        var after = Array.BinarySearch(days, day);
        if (after >= 0)
        {
            return moments[after];
        }

        after = ~after;
        if (after == 0)
        {
            return moments[0];
        }

        if (after == days.Length)
        {
            return moments[^1];
        }

        var (a, b) = (moments[after - 1], moments[after]);
        var share = (day - days[after - 1]) / (days[after] - days[after - 1]);
        return new WeatherMoment(
            a.Air + (share * (b.Air - a.Air)),
            a.Wind + (share * (b.Wind - a.Wind)),
            a.Rain + (share * (b.Rain - a.Rain)),
            a.Humidity + (share * (b.Humidity - a.Humidity)),
            a.Sun + (share * (b.Sun - a.Sun))
        );
    }
}

using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.Core.Simulation;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>
/// The air of a site at any time, from its monthly means: what is usual for the time of year, with the daily course, and how
/// far one year may lie off it.
/// </summary>
public sealed class UsualAir
{
    private const double WarmestHour = 15;
    private const int RowsADay = 12;
    private readonly MonthlyMeans curve;
    private readonly double swing;

    /// <summary>The swing that is taken where nobody typed one, K; see <see cref="MonthlyAir.SwingK"/>.</summary>
    public static double UsualSwing => UsualAirReader.Figure("daily_swing");

    /// <summary>Standard deviation by which the weeks of a heap lie off the monthly means, K.</summary>
    public static double YearToYear => UsualAirReader.Figure("spell_error");

    /// <summary>The air of a site.</summary>
    /// <param name="air">What its people typed.</param>
    /// <exception cref="ArgumentException">It is not twelve means.</exception>
    public UsualAir(MonthlyAir air)
    {
        ArgumentNullException.ThrowIfNull(air);
        curve = new MonthlyMeans([.. air.MeansC]);
        swing = air.SwingK ?? UsualSwing;
    }

    /// <summary>The usual mean of the days about a time, without the daily course, °C.</summary>
    /// <param name="time">The time by the clock of the site.</param>
    public double MeanAt(LocalDateTime time)
    {
        var days = time.Calendar.GetDaysInMonth(time.Year, time.Month);
        var over = time.Day - 1 + (time.TickOfDay / (double)NodaConstants.TicksPerDay);
        return curve.At(time.Month, over / days);
    }

    /// <summary>The usual temperature at a time, warmest at 15:00, °C.</summary>
    /// <param name="time">The time by the clock of the site.</param>
    public double At(LocalDateTime time) =>
        MeanAt(time)
        + (
            swing
            * Math.Cos(
                2
                    * Math.PI
                    * ((time.TickOfDay / (double)NodaConstants.TicksPerHour) - WarmestHour)
                    / 24
            )
        );

    /// <summary>The usual mean of some days, °C.</summary>
    /// <param name="from">The first.</param>
    /// <param name="days">How many; above 0.</param>
    public double MeanOf(LocalDate from, int days) =>
        Enumerable.Range(0, days).Average(d => MeanAt(from.PlusDays(d).At(LocalTime.Noon)));

    /// <summary>
    /// The field <c>weather</c> of a question: the usual air in rows of two hours, moved towards what was noted beside the
    /// heap, and how far it may lie off that.
    /// </summary>
    /// <param name="start">When the heap was built.</param>
    /// <param name="days">How many days are needed from then on.</param>
    /// <param name="zone">The zone of the site.</param>
    /// <param name="noted">When air was noted, and what, °C.</param>
    /// <remarks>
    /// By how much these weeks lie off the usual is taken as normal about 0 with the variance of <c>spell_error</c>; each
    /// note tells it with the variance of <c>noted_error</c>. Both are estimates, see data/weather/usual-air.csv.
    /// </remarks>
    public JsonObject Weather(
        Instant start,
        double days,
        DateTimeZone zone,
        IReadOnlyCollection<(Instant At, double Celsius)> noted
    )
    {
        ArgumentNullException.ThrowIfNull(noted);
        var before = Square(YearToYear);
        var each = Square(UsualAirReader.Figure("noted_error"));
        var after = 1 / ((1 / before) + (noted.Count / each));
        var offset = after / each * noted.Sum(n => n.Celsius - At(n.At.InZone(zone).LocalDateTime));
        var error = Math.Max(Math.Sqrt(after), UsualAirReader.Figure("least_error"));
        var rows = new JsonArray();
        for (var r = 0; r <= Math.Ceiling(days * RowsADay); r++)
        {
            var time = start + Duration.FromMinutes(24 * 60 / RowsADay * r);
            var celsius = At(time.InZone(zone).LocalDateTime) + offset;
            rows.Add(
                (JsonNode)
                    new JsonArray(r / (double)RowsADay, Math.Round(Math.Clamp(celsius, -40, 50), 2))
            );
        }

        return new JsonObject { ["hourly"] = rows, ["air_error_c"] = Math.Round(error, 2) };
    }

    private static double Square(double value) => value * value;
}

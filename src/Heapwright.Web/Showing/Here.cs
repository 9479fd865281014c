using System.Globalization;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.Web.Showing;

/// <summary>The site as this request sees it: what it is, what it has, and how its people read quantities.</summary>
/// <param name="store">Where it is kept.</param>
/// <param name="clock">The clock.</param>
public sealed class Here(IItemStore store, TimeProvider clock)
{
    private SiteContents? contents;

    /// <summary>The site; null where none was started yet.</summary>
    public Site? Site { get; private set; }

    /// <summary>Whether there is anything of the sample garden.</summary>
    public bool IsSample => Site is { IsSample: true };

    /// <summary>How quantities are shown.</summary>
    public Shown Show { get; private set; } =
        new(DisplayUnits.Metric, CultureInfo.InvariantCulture);

    /// <summary>The site's zone; that of this machine where no site was started.</summary>
    public DateTimeZone Zone => Site?.TimeZone() ?? MachineZone();

    /// <summary>The day at the site.</summary>
    public LocalDate Today => SiteDays.DayOf(clock.Now(), Zone);

    /// <summary>Reads the site; once for each request.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task Read(CancellationToken cancel)
    {
        Site = await store.Find<Site>(Site.OnlyId, cancel);
        Show = new Shown(
            Site?.Units ?? UnitsFor(CultureInfo.CurrentCulture),
            CultureInfo.CurrentCulture
        );
    }

    /// <summary>What the site has; read once for each request.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<SiteContents> Contents(CancellationToken cancel = default) =>
        contents ??= await SiteContents.Read(store, cancel);

    /// <summary>How many days ago a day was.</summary>
    /// <param name="day">The day.</param>
    public int DaysSince(LocalDate day) => SiteDays.Since(day, clock.Now(), Zone);

    /// <summary>The units people of a country think in, to start with.</summary>
    /// <param name="culture">Their number format.</param>
    public static DisplayUnits UnitsFor(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return culture.Name is "en-US" ? DisplayUnits.American : DisplayUnits.Metric;
    }

    /// <summary>The zone of this machine, or UTC where it has none that is known.</summary>
    public static DateTimeZone MachineZone()
    {
        try
        {
            return DateTimeZoneProviders.Tzdb.GetSystemDefault();
        }
        catch (Exception problem)
            when (problem
                    is NodaTime.TimeZones.DateTimeZoneNotFoundException
                        or TimeZoneNotFoundException
            )
        {
            return DateTimeZone.Utc;
        }
    }
}

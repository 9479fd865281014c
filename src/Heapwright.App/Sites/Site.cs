using System.Text.Json.Serialization;
using Heapwright.App.Changes;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>The garden itself: its name, where its clock stands, and in which units its people think.</summary>
public sealed record Site : Item
{
    /// <summary>The site of an installation; there is one.</summary>
    public static Guid OnlyId { get; } = new("5175e000-0000-4000-8000-000000000001");

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The time zone in which its days are counted, such as <c>Europe/London</c>.</summary>
    public required string Zone { get; init; }

    /// <summary>The units that are shown and typed.</summary>
    public DisplayUnits Units { get; init; } = DisplayUnits.Metric;

    /// <summary>The language it was started in, for what it says to nobody in particular; pages follow the reader.</summary>
    public string Language { get; init; } = "en";

    /// <summary>The air through the year; null where nobody typed it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public MonthlyAir? Air { get; init; }

    /// <summary>The zone, by its id.</summary>
    public DateTimeZone TimeZone() => DateTimeZoneProviders.Tzdb[Zone];

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        foreach (var fault in Check.Words(Name, "name", 1, 60))
        {
            yield return fault;
        }

        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(Zone) is null)
        {
            yield return Refusal.Of("zone", "sites.zone_unknown", Zone);
        }

        if (!Languages.All.Contains(Language, StringComparer.Ordinal))
        {
            yield return Refusal.Of("language", "sites.language_unknown", Language);
        }

        foreach (var fault in Air?.Faults() ?? [])
        {
            yield return fault;
        }

        foreach (var fault in Units.Faults())
        {
            yield return fault;
        }
    }
}

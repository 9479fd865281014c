using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Coming;

/// <summary>Something to do on a day, or on one of a few days.</summary>
/// <param name="Subject">What it is about: the entry, the thing at hand, the sheet. With the kind it stays the same thing.</param>
/// <param name="Kind">What waits.</param>
/// <param name="First">The first day; today for what waits for none.</param>
/// <param name="Last">The last day.</param>
/// <param name="ChangedAt">When what it is about was last changed.</param>
/// <param name="Page">The page where it is done, from the root of the site.</param>
/// <param name="Code">The code of the sentence.</param>
/// <param name="Values">The values in it.</param>
public sealed record ComingDay(
    Guid Subject,
    ComingKind Kind,
    LocalDate First,
    LocalDate Last,
    Instant ChangedAt,
    string Page,
    string Code,
    ImmutableArray<string> Values
)
{
    /// <summary>Whether a day is known.</summary>
    public bool IsDated => Kind != ComingKind.HalfBuilt;

    /// <summary>What to do, in a sentence; names of things stand in it, names of people do not.</summary>
    /// <param name="culture">The language.</param>
    public string Text(CultureInfo? culture = null) => Words.Of(Code, culture, [.. Values]);
}

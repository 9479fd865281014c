using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>A heap as it was built. What happened to it since is its diary, which is no part of this.</summary>
public sealed record KeptHeap : Item
{
    /// <summary>The aims a heap can have, in the words of <c>recipe</c>.</summary>
    public static IReadOnlyList<string> Aims { get; } =
    ["use_most", "least_cost", "all_through_heat", "least_work"];

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The bay it was built in, if it is one of the site's.</summary>
    public Guid? BayId { get; init; }

    /// <summary>The build sheet it was built from, if it was kept.</summary>
    public Guid? SheetId { get; init; }

    /// <summary>When it was finished.</summary>
    public required Instant BuiltAt { get; init; }

    /// <summary>The zone in which its days are counted, such as <c>Europe/London</c>.</summary>
    public required string Zone { get; init; }

    /// <summary>What its people want most of it; one of <see cref="Aims"/>.</summary>
    public string Aim { get; init; } = "all_through_heat";

    /// <summary>What it was built of and in: a question of <c>simulate</c> without weather, events and days.</summary>
    public required JsonElement Question { get; init; }

    /// <summary>The zone, by its id.</summary>
    public DateTimeZone TimeZone() => DateTimeZoneProviders.Tzdb[Zone];

    /// <summary>The day it is in by the calendar on the wall; the day of building is 0.</summary>
    /// <param name="now">The moment.</param>
    public int DayOf(Instant now) => SiteDays.Between(BuiltAt, now, TimeZone());

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        ImmutableArray<Refusal> plain =
        [
            .. Check.Words(Name, "name", 1, 100),
            .. DateTimeZoneProviders.Tzdb.GetZoneOrNull(Zone) is null
                ? [Refusal.Of("zone", "sites.zone_unknown", Zone)]
                : Array.Empty<Refusal>(),
            .. Check.Choice(Aim, "aim", Aims) is { } aim ? [aim] : Array.Empty<Refusal>(),
            .. Check.Object(Question, "question"),
        ];
        if (!plain.IsEmpty)
        {
            return plain;
        }

        try
        {
            HeapReader.Read(this);
            return [];
        }
        catch (InputProblem problem)
        {
            return [Refusal.Of("question", "sites.question_wrong", problem.Message)];
        }
    }
}

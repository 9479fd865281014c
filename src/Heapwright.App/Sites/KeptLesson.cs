using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>What a heap taught of hands, stuff and bay, kept for the next one in the same place.</summary>
public sealed record KeptLesson : Item
{
    /// <summary>The most lessons that are used for one heap, the newest first.</summary>
    public const int MostUsed = 20;

    /// <summary>The heap that taught it; the lesson of a heap has an id of its own, made from that of the heap.</summary>
    public required Guid HeapId { get; init; }

    /// <summary>What the heap is called.</summary>
    public required string Name { get; init; }

    /// <summary>The bay the heap stood in; null for none of the site's.</summary>
    public Guid? BayId { get; init; }

    /// <summary>The bin as the heap was told to stand in: where no bay is named, the same bin is the same place.</summary>
    public required JsonElement Bin { get; init; }

    /// <summary>When it was learned.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>From how many readings.</summary>
    public required int Readings { get; init; }

    /// <summary>Whether it is used for the next heaps.</summary>
    public bool IsUsed { get; init; } = true;

    /// <summary>The parameters by their names in data/parameters.csv, from the plain priors.</summary>
    public required ImmutableSortedDictionary<string, LessonScore> Parameters { get; init; }

    /// <summary>Whether it is for heaps in a place.</summary>
    /// <param name="bayId">The bay; null for none of the site's.</param>
    /// <param name="bin">The bin as the contract has it.</param>
    public bool IsFor(Guid? bayId, JsonNode? bin) =>
        BayId == bayId && (BayId is not null || JsonNode.DeepEquals(JsonObject.Create(Bin), bin));

    /// <summary>It as an entry of <c>earlier</c>.</summary>
    public JsonObject ToEarlier()
    {
        var json = new JsonObject();
        foreach (var (name, score) in Parameters)
        {
            json[name] = new JsonObject { ["mean"] = score.Mean, ["deviation"] = score.Deviation };
        }

        return json;
    }

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        foreach (var fault in Check.Words(Name, "name", 1, 100).Concat(Check.Object(Bin, "bin")))
        {
            yield return fault;
        }

        if (Check.Between(Readings, "readings", 0, 1_000_000) is { } readings)
        {
            yield return readings;
        }

        foreach (var (name, score) in Parameters)
        {
            if (ParameterNames.Find(name) is null)
            {
                yield return Refusal.Of("parameters", "sites.parameter_unknown", name);
            }

            if (Check.Between(score.Mean, name, -10, 10) is { } mean)
            {
                yield return mean;
            }

            if (Check.Between(score.Deviation, name, 0.01, 10) is { } deviation)
            {
                yield return deviation;
            }
        }
    }
}

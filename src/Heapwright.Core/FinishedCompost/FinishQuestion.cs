using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What is known of a heap that may be done; everything may be missing.</summary>
public sealed record FinishQuestion
{
    /// <summary>The self-heating test.</summary>
    public SelfHeatingTest? SelfHeating { get; init; }

    /// <summary>The seed test.</summary>
    public SeedTest? Seeds { get; init; }

    /// <summary>The test with beans or peas in pots.</summary>
    public PotTest? Pots { get; init; }

    /// <summary>Measured quantities by the fields of the scales, such as <c>ec_ds_m</c>.</summary>
    public ImmutableSortedDictionary<string, Spread> Measured { get; init; } =
        ImmutableSortedDictionary<string, Spread>.Empty;

    /// <summary>What was smelt, seen and met: the kind of sign, and the word.</summary>
    public ImmutableArray<(string Sign, string Word)> Signs { get; init; } = [];

    /// <summary>Days since building.</summary>
    public Spread? AgeDays { get; init; }

    /// <summary>How much warmer the core is than the air, K.</summary>
    public Spread? AboveAir { get; init; }

    /// <summary>Fast matter that is left, % of that at the start, from a forecast.</summary>
    public Spread? FastMatterLeft { get; init; }

    /// <summary>Whether manure went in.</summary>
    public bool? Manure { get; init; }

    /// <summary>Whether all of it was shown to be hot by a rule for manure.</summary>
    public bool ShownHot { get; init; }

    /// <summary>Whether something that may carry weedkillers went in.</summary>
    public bool? HerbicideRisk { get; init; }

    /// <summary>What was measured at the start.</summary>
    public MatterGiven Start { get; init; } = MatterGiven.None;

    /// <summary>What went in.</summary>
    public Mixture? Recipe { get; init; }

    /// <summary>What was measured of the compost.</summary>
    public MatterGiven End { get; init; } = MatterGiven.None;

    /// <summary>What the simulation of this heap says of it now: dry mass, moisture and volume; null where it was not followed.</summary>
    public MatterGiven? Simulated { get; init; }

    /// <summary>Where it goes.</summary>
    public ImmutableArray<Bed> Beds { get; init; } = [];

    /// <summary>A depth that was asked for without a bed, cm.</summary>
    public Spread? AskedDepth { get; init; }

    /// <summary>What it is wanted for.</summary>
    public ImmutableArray<CompostUse> Uses { get; init; } = [.. Enum.GetValues<CompostUse>()];

    /// <summary>The seed of the sample set.</summary>
    public ulong Seed { get; init; } = 1;
}

namespace Heapwright.Core.Readings.Deeds;

/// <summary>One material that was added, as it was told.</summary>
public sealed record AddedStuff
{
    /// <summary>The id of a material of the library; empty where it is told by name only.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is too long.</exception>
    public string Material
    {
        get;
        init => field = EntryLimits.Text(value, 0, 100, nameof(Material));
    } = "";

    /// <summary>What the person calls it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is empty or too long.</exception>
    public required string Name
    {
        get;
        init => field = EntryLimits.Text(value, 1, 100, nameof(Name));
    }

    /// <summary>Who gave it; empty where that was not told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is too long.</exception>
    public string Giver
    {
        get;
        init => field = EntryLimits.Text(value, 0, 100, nameof(Giver));
    } = "";

    /// <summary>The day it was cut, fetched or brought; null where that was not told.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>How many of the unit; 0 to 1,000,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required double Value
    {
        get;
        init => field = EntryLimits.Within(value, 0, 1_000_000, nameof(Value));
    }

    /// <summary>The unit, such as <c>bucket</c> or <c>kg</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is empty or too long.</exception>
    public required string Unit
    {
        get;
        init => field = EntryLimits.Text(value, 1, 60, nameof(Unit));
    }
}

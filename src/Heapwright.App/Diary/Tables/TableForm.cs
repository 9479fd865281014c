using System.Collections.Immutable;

namespace Heapwright.App.Diary.Tables;

/// <summary>How a table of readings is written, as it was found out from its beginning.</summary>
public sealed record TableForm
{
    /// <summary>What stands between two cells.</summary>
    public required char Separator { get; init; }

    /// <summary>Whether the first row names the columns.</summary>
    public required bool HasHeader { get; init; }

    /// <summary>The names of the columns; their numbers where there is no header.</summary>
    public required ImmutableArray<string> Names { get; init; }

    /// <summary>What each column is for; null for one that is not read.</summary>
    public required ImmutableArray<ColumnRole?> Roles { get; init; }

    /// <summary>Whether decimals stand behind a comma.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>Whether temperatures are in °F.</summary>
    public bool Fahrenheit { get; init; }

    /// <summary>Whether the unit of temperature is said in the table or by the person, not guessed from the values.</summary>
    public bool UnitIsSaid { get; init; }

    /// <summary>Whether depths are in inches.</summary>
    public bool DepthInInches { get; init; }

    /// <summary>The order of dates with slashes.</summary>
    public DateOrder Dates { get; init; }

    /// <summary>The column of a role; −1 where there is none.</summary>
    /// <param name="role">The role.</param>
    public int Column(ColumnRole role) => Roles.IndexOf(role);
}

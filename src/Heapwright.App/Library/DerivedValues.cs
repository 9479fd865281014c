using Heapwright.Core.Materials;

namespace Heapwright.App.Library;

/// <summary>The sources of what is not in the data files but computed from them, or judged by us.</summary>
public static class DerivedValues
{
    /// <summary>The key of data/references.bib that stands for our own rules and estimates.</summary>
    public const string Ours = "own_estimate";

    /// <summary>The sources of the ratio and of the pool shares, as far as they can be computed.</summary>
    /// <param name="properties">The properties they are computed from.</param>
    public static IEnumerable<PropertySource> Sources(MaterialProperties properties)
    {
        ArgumentNullException.ThrowIfNull(properties);
        if (properties.CarbonNitrogenRatio() is not null)
        {
            yield return Derived(
                "carbon_nitrogen_ratio",
                "carbon over nitrogen, the two taken as independent"
            );
        }

        if (PoolShares.Of(properties) is not null)
        {
            yield return Derived(
                "slow_pct_db",
                "what is left of the dry matter after ash, fast and lignin-rich matter"
            );
            yield return Derived("lignin_rich_pct_db", "1.8 times lignin");
        }

        yield return new PropertySource(
            "spoils_in_days",
            Ours,
            EvidenceKind.Estimate,
            "a working figure for store in the open air at 15 to 20 °C"
        );
    }

    private static PropertySource Derived(string field, string note) =>
        new(field, Ours, EvidenceKind.Derived, note);
}

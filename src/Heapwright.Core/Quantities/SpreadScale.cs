namespace Heapwright.Core.Quantities;

/// <summary>The scale on which a <see cref="Spread"/> is normal in two pieces.</summary>
public enum SpreadScale
{
    /// <summary>Logarithmic: amounts, densities and contents, which are positive.</summary>
    Positive,

    /// <summary>Logit: shares in percent, which lie between 0 and 100.</summary>
    Percent,

    /// <summary>Plain, never below 0; used where a low end of 0 rules the logarithm out.</summary>
    PlainPositive,

    /// <summary>Plain, never outside 0 to 100; used where an end at 0 or 100 rules the logit out.</summary>
    PlainPercent,
}

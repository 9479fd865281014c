using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>The squeeze test: a handful pressed hard, told in one of five words.</summary>
/// <remarks>
/// The word changes at four moisture contents, which a person hits with some error. That a wrung-out sponge means roughly
/// 50 to 60 % is common practice (no source); the limits by class and the error are our estimates, in line with 65 % as
/// the most for strawy and 58 % for fine mixes.
/// </remarks>
public sealed record SqueezeTest : IMeasurement
{
    // Now and then a word is simply wrong.
    private const double WrongWord = 0.02;
    private const double HighestAsh = 60;

    private SqueezeTest(SqueezeWord word) => Word = word;

    /// <summary>The word.</summary>
    public SqueezeWord Word { get; }

    /// <summary>A squeeze test.</summary>
    /// <param name="word">The word.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the five words.</exception>
    public static SqueezeTest Of(SqueezeWord word) =>
        Enum.IsDefined(word)
            ? new SqueezeTest(word)
            : throw new ArgumentOutOfRangeException(
                nameof(word),
                (int)word,
                "dust, dry, sponge, drips or streams is allowed"
            );

    /// <summary>How this material gives up its water.</summary>
    /// <param name="material">The material.</param>
    public static SqueezeClass ClassOf(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        if (
            material.Freshness is "fresh" or "wilted"
            && material.Kind is "leafy" or "stemmy" or "fruity" or "seedy"
        )
        {
            return SqueezeClass.Living;
        }

        return (material.Kind, material.Particle) switch
        {
            ("woody", not "fine") or (_, "coarse") => SqueezeClass.Coarse,
            ("manure" or "meal" or "soily" or "seedy", _) or (_, "fine") => SqueezeClass.Fine,
            _ => SqueezeClass.Leafy,
        };
    }

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The material is mostly mineral: soil and ash drip at a far lower moisture.</exception>
    public Likelihood On(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        if (material.Properties[MaterialProperty.Ash] is { Typical: > HighestAsh } ash)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{material.Name} is {ash.Typical} % mineral; the squeeze test is for stuff with at most {HighestAsh} %: dry a sample instead"
                ),
                nameof(material)
            );
        }

        var (limits, error) = Limits(ClassOf(material));
        var from = Word == SqueezeWord.Dust ? double.NegativeInfinity : limits[(int)Word - 1];
        var to = Word == SqueezeWord.Streams ? double.PositiveInfinity : limits[(int)Word];
        return new Likelihood(
            MaterialProperty.Moisture,
            moisture =>
            {
                var word =
                    NormalDistribution.Cumulative((to - moisture) / error)
                    - NormalDistribution.Cumulative((from - moisture) / error);
                return Math.Log((WrongWord / 5) + ((1 - WrongWord) * word));
            },
            null,
            null
        );
    }

    // The moisture, % of wet mass, at which dust turns to dry, dry to sponge, sponge to drips and drips to streams.
    private static (double[] Limits, double Error) Limits(SqueezeClass squeezed) =>
        squeezed switch
        {
            SqueezeClass.Coarse => ([20, 42, 57, 66], 6),
            SqueezeClass.Leafy => ([22, 47, 65, 75], 6),
            SqueezeClass.Fine => ([24, 45, 60, 69], 5),
            _ => ([25, 60, 86, 93], 10),
        };
}

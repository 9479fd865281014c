using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Measurements;

/// <summary>Sharpens what is known of a person's own stuff by what they measured on it.</summary>
public static class Sharpening
{
    /// <summary>The key of data/references.bib that stands for a person's own measurement.</summary>
    public const string OwnMeasurement = "own_measurement";

    // One in a hundred loads lies further out than this by chance.
    private const double Surprise = 2.58;

    /// <summary>The material after all its measurements.</summary>
    /// <param name="material">The material as the library, or a guess, has it: give all measurements at once.</param>
    /// <param name="measurements">The measurements, in any order: the answer does not depend on it.</param>
    /// <remarks>
    /// Properties are sharpened one by one. Where the moisture was measured and the density was not, the density follows
    /// the water: the dry matter in a bucket of loose stuff is taken as unchanged.
    /// </remarks>
    /// <exception cref="ArgumentException">A measurement does not suit the material, or nothing is known to start from.</exception>
    public static SharpenedMaterial Of(Material material, IReadOnlyList<IMeasurement> measurements)
    {
        ArgumentNullException.ThrowIfNull(material);
        ArgumentNullException.ThrowIfNull(measurements);
        var told = measurements.Select(m => m.On(material)).ToLookup(l => l.Property);
        var changes = new List<PropertyChange>();
        var remarks = new List<Reason>();
        var properties = material.Properties;
        if (
            measurements.OfType<SqueezeTest>().Any()
            && SqueezeTest.ClassOf(material) == SqueezeClass.Living
        )
        {
            remarks.Add(Reason.Of("materials.squeeze_living"));
        }

        foreach (var property in PropertyFacts.All)
        {
            var likelihoods = told[property].ToList();
            if (likelihoods.Count == 0)
            {
                continue;
            }

            var before =
                properties[property]
                ?? throw new ArgumentException(
                    $"nothing is known of {PropertyFacts.FieldName(property)} of {material.Name} to start from",
                    nameof(material)
                );
            remarks.AddRange(Surprises(property, before, likelihoods));
            var after = Allowed(
                property,
                Posterior.Of(
                    before,
                    PropertyFacts.Scale(property),
                    [.. likelihoods.Select(l => l.LogAt)]
                )
            );
            properties = properties.With(property, after);
            changes.Add(new PropertyChange(property, before, after));
        }

        if (
            told.Contains(MaterialProperty.Moisture) && !told.Contains(MaterialProperty.BulkDensity)
        )
        {
            properties = Follow(material, properties, changes, remarks);
        }

        var sharpened = material with
        {
            Properties = properties,
            Sources = Sources(material.Sources, changes, told),
        };
        return new SharpenedMaterial(sharpened, [.. changes], [.. remarks]);
    }

    private static IEnumerable<Reason> Surprises(
        MaterialProperty property,
        Spread before,
        IEnumerable<Likelihood> likelihoods
    )
    {
        foreach (var told in likelihoods)
        {
            if (told is not { Value: { } value, StandardDeviation: { } error } || before.IsExact)
            {
                continue;
            }

            // The error in units of the prior's own spread, taken on the side on which the value lies.
            var scale = PropertyFacts.Scale(property);
            var z = before.ScoreOf(value, scale);
            var toward = before.ScoreOf(Math.Max(value - (Math.Sign(z) * error), 1e-9), scale);
            var own = Math.Abs(z - toward);
            if (Math.Abs(z) > Surprise * Math.Sqrt(1 + (own * own)))
            {
                yield return Reason.Of(
                    "materials.surprising_measurement",
                    PropertyFacts.FieldName(property),
                    value,
                    before.Low,
                    before.High
                );
            }
        }
    }

    // A litre of loose stuff keeps its dry matter when rain fills its pores or the sun empties them.
    private static MaterialProperties Follow(
        Material material,
        MaterialProperties properties,
        List<PropertyChange> changes,
        List<Reason> remarks
    )
    {
        var measured = material.Sources.Any(s =>
            string.Equals(s.Source, OwnMeasurement, StringComparison.Ordinal)
            && string.Equals(
                s.Field,
                PropertyFacts.FieldName(MaterialProperty.BulkDensity),
                StringComparison.Ordinal
            )
        );
        if (
            measured
            || material.Properties[MaterialProperty.BulkDensity] is not { } density
            || material.Properties[MaterialProperty.Moisture] is not { Typical: < 100 } before
            || properties[MaterialProperty.Moisture] is not { Typical: < 100 } after
        )
        {
            return properties;
        }

        var factor = (100 - before.Typical) / (100 - after.Typical);
        var followed = Allowed(MaterialProperty.BulkDensity, density.Times(factor));
        changes.Add(new PropertyChange(MaterialProperty.BulkDensity, density, followed));
        remarks.Add(Reason.Of("materials.density_follows_water", Math.Round((factor - 1) * 100)));
        return properties.With(MaterialProperty.BulkDensity, followed);
    }

    private static Spread Allowed(MaterialProperty property, Spread value)
    {
        var (lowest, highest) = PropertyFacts.Allowed(property);
        return Spread.Of(
            Math.Clamp(value.Low, lowest, highest),
            Math.Clamp(value.Typical, lowest, highest),
            Math.Clamp(value.High, lowest, highest)
        );
    }

    private static ImmutableArray<PropertySource> Sources(
        ImmutableArray<PropertySource> before,
        List<PropertyChange> changes,
        ILookup<MaterialProperty, Likelihood> told
    )
    {
        var changed = changes.ToDictionary(
            c => PropertyFacts.FieldName(c.Property),
            c => told.Contains(c.Property),
            StringComparer.Ordinal
        );
        return
        [
            .. before.Where(s => !changed.ContainsKey(s.Field)),
            .. changed.Select(c => new PropertySource(
                c.Key,
                OwnMeasurement,
                EvidenceKind.Derived,
                c.Value
                    ? "the range of the library, sharpened by what was measured on this very stuff"
                    : "the density of the library, shifted with the water that was measured"
            )),
        ];
    }
}

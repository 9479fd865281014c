using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Measurements;
using UnitsNet;

namespace Heapwright.App.Sites;

/// <summary>Measurements as they are kept, and what they tell about a person's own stuff.</summary>
public static class SiteMeasurements
{
    /// <summary>What is known of a material here after all its measurements.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="key">The material; see <see cref="MaterialKey"/>.</param>
    /// <param name="material">The material as the library, or a guess, has it.</param>
    public static SharpenedMaterial Sharpen(SiteContents contents, string key, Material material)
    {
        ArgumentNullException.ThrowIfNull(contents);
        List<IMeasurement> all =
        [
            .. contents
                .Measurements.Where(m => m.Material == key)
                .Select(Read)
                .OfType<IMeasurement>(),
        ];
        try
        {
            return Sharpening.Of(material, all);
        }
        catch (ArgumentException)
        {
            // A measurement that no longer suits the material tells nothing; the material stays as it is known.
            return new SharpenedMaterial(material, [], []);
        }
    }

    /// <summary>A bucket weighed full and empty.</summary>
    /// <param name="litres">What the bucket holds.</param>
    /// <param name="emptyKg">The empty bucket.</param>
    /// <param name="fullKg">The full bucket.</param>
    public static (JsonElement? Values, Refusal? Refusal) Bucket(
        double litres,
        double emptyKg,
        double fullKg
    ) =>
        Checked(
            new JsonObject
            {
                ["holds_l"] = litres,
                ["empty_kg"] = emptyKg,
                ["full_kg"] = fullKg,
            },
            "bucket_weight"
        );

    /// <summary>A sample weighed before and after drying.</summary>
    /// <param name="containerG">The empty dish.</param>
    /// <param name="wetG">The dish with the wet sample.</param>
    /// <param name="dryG">The dish with the dried sample.</param>
    /// <param name="microwave">Whether it was dried in a microwave instead of an oven.</param>
    public static (JsonElement? Values, Refusal? Refusal) Dried(
        double containerG,
        double wetG,
        double dryG,
        bool microwave
    ) =>
        Checked(
            new JsonObject
            {
                ["container_g"] = containerG,
                ["wet_g"] = wetG,
                ["dry_g"] = dryG,
                ["microwave"] = microwave,
            },
            "oven_moisture"
        );

    /// <summary>A squeeze test.</summary>
    /// <param name="word">dust, dry, sponge, drips or streams.</param>
    public static (JsonElement? Values, Refusal? Refusal) Squeeze(string word) =>
        Checked(new JsonObject { ["word"] = word }, "squeeze");

    /// <summary>A value from a laboratory.</summary>
    /// <param name="field">The property, such as <c>nitrogen_pct_db</c>.</param>
    /// <param name="value">The value, in the unit of the property.</param>
    public static (JsonElement? Values, Refusal? Refusal) Lab(string field, double value) =>
        Checked(new JsonObject { ["property"] = field, ["value"] = value }, "lab");

    private static (JsonElement?, Refusal?) Checked(JsonObject values, string measure)
    {
        var element = JsonSerializer.SerializeToElement(values);
        try
        {
            Make(measure, element);
            return (element, null);
        }
        catch (ArgumentException problem)
        {
            return (null, Refusal.Of("", "sites.measured_wrong", Sentence(problem)));
        }
    }

    private static IMeasurement? Read(Measurement measurement)
    {
        try
        {
            return Make(measurement.Measure, measurement.Values);
        }
        catch (Exception problem)
            when (problem is ArgumentException or KeyNotFoundException or InvalidOperationException)
        {
            // A file from elsewhere may hold values that make no measurement; they tell nothing.
            return null;
        }
    }

    private static IMeasurement Make(string measure, JsonElement values)
    {
        double Number(string field) => values.GetProperty(field).GetDouble();
        switch (measure)
        {
            case "bucket_weight":
                return BucketWeighing.Of(
                    Volume.FromLiters(Number("holds_l")),
                    Mass.FromKilograms(Number("empty_kg")),
                    Mass.FromKilograms(Number("full_kg")),
                    FillingMethod.Loose
                );
            case "oven_moisture":
                return DriedSample.Of(
                    Mass.FromGrams(Number("container_g")),
                    Mass.FromGrams(Number("wet_g")),
                    Mass.FromGrams(Number("dry_g")),
                    values.GetProperty("microwave").GetBoolean()
                        ? DryingMethod.Microwave
                        : DryingMethod.Oven
                );
            case "squeeze":
                var word = values.GetProperty("word").GetString();
                return SqueezeTest.Of(
                    Enum.TryParse<SqueezeWord>(word, ignoreCase: true, out var known)
                    && Enum.IsDefined(known)
                        ? known
                        : throw new ArgumentException(
                            $"\"{word}\" is none of the five words",
                            nameof(values)
                        )
                );
            default:
                var field = values.GetProperty("property").GetString() ?? "";
                var property =
                    PropertyFacts.FromFieldName(field)
                    ?? throw new ArgumentException(
                        $"\"{field}\" is no property of a material",
                        nameof(values)
                    );
                var value = Number("value");
                return LabReport.Of(property, value, LabReport.UsualError(property, value));
        }
    }

    // Exceptions name their parameter after the sentence; people want the sentence.
    private static string Sentence(ArgumentException problem)
    {
        var text = problem.Message;
        var end = text.IndexOf(" (Parameter", StringComparison.Ordinal);
        return end < 0 ? text.ReplaceLineEndings(" ") : text[..end].ReplaceLineEndings(" ");
    }
}

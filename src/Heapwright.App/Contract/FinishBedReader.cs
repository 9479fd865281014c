using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Reads the beds that get compost.</summary>
/// <param name="assumptions">Takes what was assumed.</param>
internal sealed class FinishBedReader(Assumptions assumptions)
{
    private const int MostBeds = 200;

    private static readonly string[] Asked =
    [
        "name",
        "area_m2",
        "length_m",
        "width_m",
        "depth_cm",
        "volume_l",
        "tilled_cm",
        "crop",
        "use",
        "eaten",
        "touches_soil",
        "nitrogen_need_g_m2",
    ];

    /// <summary>The beds.</summary>
    /// <param name="list">The field <c>beds</c>, or null.</param>
    public ImmutableArray<Bed> Read(Input? list) =>
        list is null
            ? []
            : [.. list.Items(0, MostBeds).Select((input, i) => Read(input, $"bed {i + 1}", true)!)];

    /// <summary>The one place of <c>apply</c>; null where it names no area.</summary>
    /// <param name="input">The field <c>apply</c>.</param>
    /// <param name="depth">The depth that was asked for.</param>
    public Bed? Apply(Input input, out Spread? depth)
    {
        depth = input.Has("depth_cm") ? Depth(input.Fields(Asked)) : null;
        return Read(input, "bed", areaNeeded: false);
    }

    private static Spread? Depth(InputFields fields) => fields["depth_cm"]?.Spread(0.01, 200);

    private Bed? Read(Input input, string usualName, bool areaNeeded)
    {
        var fields = input.Fields(Asked);
        MatterReader.One(fields, "area_m2", "length_m");
        var area = fields["area_m2"]?.Spread(0.01, 1e7);
        if (fields["length_m"] is { } length)
        {
            var (l, w) = (
                length.Number(0.05, 10_000),
                fields.Needed("width_m").Number(0.05, 10_000)
            );
            area = Spread.Exact(l * w);
        }
        else if (fields["width_m"] is not null)
        {
            throw fields.Owner.Problem(
                "has a \"width_m\" without a \"length_m\"; both are needed, or \"area_m2\""
            );
        }

        var name = fields["name"]?.Text(80) ?? usualName;
        var depth = Depth(fields);
        if (fields["volume_l"] is { } volume)
        {
            (area, depth) = FromVolume(volume, area, depth);
        }

        var tilled = fields["tilled_cm"]?.Spread(0.1, 200);
        var use = fields["use"] is { } word
            ? FinishTableReader.Use(word.Choice([.. FinishTableReader.UseWords]))
            : CompostUse.Beds;
        var crop = fields["crop"]?.Text(80) is { } called ? Find(called) : null;
        var eaten = fields["eaten"]?.YesNo();
        var touches = fields["touches_soil"]?.YesNo();
        var need = fields["nitrogen_need_g_m2"]?.Spread(0, 200);
        if (area is null)
        {
            return areaNeeded
                ? throw fields.Owner.Problem(
                    "the field \"area_m2\" is missing; it is needed, or \"length_m\" and \"width_m\""
                )
                : null;
        }

        if (fields["crop"] is not null && crop is null)
        {
            assumptions.Say("finish.crop_unknown", fields["crop"]!.Text(80));
        }
        else if (crop is null && eaten is null)
        {
            assumptions.Say("finish.crop_missing", name);
        }

        return new Bed
        {
            Name = name,
            SquareMetres = area.Value,
            DepthCentimetres = depth,
            TilledCentimetres = tilled,
            Use = crop is { Id: "lawn" } && fields["use"] is null ? CompostUse.Lawn : use,
            Crop = crop,
            IsFood = eaten ?? crop?.IsFood ?? true,
            TouchesSoil = touches ?? crop?.TouchesSoil ?? true,
            NitrogenNeed = need ?? crop?.NitrogenNeed,
        };
    }

    // A volume with one of depth and area gives the other.
    private static (Spread? Area, Spread? Depth) FromVolume(
        Input volume,
        Spread? area,
        Spread? depth
    )
    {
        var litres = volume.Spread(0.01, 1e9);
        return (area, depth) switch
        {
            ({ } a, null) => (a, Quotient(litres, a, Spreading.Centimetres)),
            (null, { } d) => (Quotient(litres, d, Spreading.SquareMetres), d),
            (null, null) => throw volume.Problem(
                "needs an \"area_m2\" or a \"depth_cm\" beside it"
            ),
            _ => throw volume.Problem(
                "stands beside an area and a depth, which say it already; write two of the three"
            ),
        };
    }

    private static Spread Quotient(Spread top, Spread bottom, Func<double, double, double> of) =>
        Spread.Of(
            of(top.Low, bottom.High),
            of(top.Typical, bottom.Typical),
            of(top.High, bottom.Low)
        );

    private static Crop? Find(string called)
    {
        var word = called.ToLowerInvariant().Replace(' ', '_').Replace('-', '_');
        return FinishTableReader.Tables.Crops.FirstOrDefault(c =>
            c.Id == word || c.Words.Contains(word, StringComparer.Ordinal)
        );
    }
}

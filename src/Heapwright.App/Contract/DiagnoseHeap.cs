using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Reads what is told of the heap itself.</summary>
internal sealed class DiagnoseHeap(SignModel model, Assumptions assumptions, Clashes clashes)
{
    private static readonly string[] Choices =
    [
        "container",
        "fed",
        "chopped",
        "turned",
        "watered",
        "covered",
        "stands_on",
        "kept_by",
    ];

    private const double MediumM3 = 0.9;

    private readonly List<SignFact> facts = [];
    private readonly List<string> answered = [];

    /// <summary>Its fields.</summary>
    public static string[] Fields { get; } =
    [
        "volume_m3",
        "height_m",
        "width_m",
        "length_m",
        "size",
        "age_days",
        "materials",
        "near",
        .. Choices,
    ];

    /// <summary>What it says.</summary>
    public IEnumerable<SignFact> Facts => facts;

    /// <summary>The fields that were answered.</summary>
    public IEnumerable<string> Answered => answered;

    /// <summary>Its age, where it was said.</summary>
    public double? AgeDays { get; private set; }

    /// <summary>Its volume, m³, where it was said.</summary>
    public double? VolumeM3 { get; private set; }

    /// <summary>Its volume by the word for its size, m³, where that is narrow enough.</summary>
    public double? RoughVolumeM3 { get; private set; }

    /// <summary>What is known of it for mending it.</summary>
    public HeapToMend ToMend { get; private set; } = new();

    /// <summary>Whether its size is known by a word alone.</summary>
    public bool IsSizedByWord { get; private set; }

    /// <summary>Whether it is fed little by little.</summary>
    public bool IsTrickle { get; private set; }

    /// <summary>Its materials that the library knows.</summary>
    public ImmutableArray<Material> Materials { get; private set; } = [];

    public void Read(Input? input, ulong seed)
    {
        if (input is null)
        {
            return;
        }

        var heap = input.Fields(Fields);
        AgeDays = heap["age_days"]?.Spread(0, 20_000).Typical;
        Volume(heap);
        foreach (var choice in Choices)
        {
            if (heap[choice] is { } said)
            {
                var field = model.Field("heap." + choice);
                facts.Add(new ChoiceFact(field, said.Choice([.. field.Words])));
                answered.Add(field.Id);
                IsTrickle |= said.Text() == "trickle";
            }
        }

        Contents(heap["materials"], seed);
    }

    private void Volume(InputFields heap)
    {
        var sides = OfSides(heap);
        var told = heap["volume_m3"]?.Spread(0.001, 100_000);
        VolumeM3 = told?.Typical ?? sides;
        ToMend = ToMend with
        {
            VolumeM3 = told ?? (sides is { } m3 ? Spread.Exact(m3) : null),
            Container = heap["container"]?.Text(),
        };
        var size = heap["size"]?.Choice([.. DiagnoseWords.Words("heap.size")]);
        if (VolumeM3 is { } volume)
        {
            facts.Add(NumberFacts.Of(model.Field("heap.volume_m3"), volume, inLogs: true));
            answered.Add("heap.size");
            CheckSize(volume, size);
        }
        else if (size is not null)
        {
            RoughVolumeM3 = size == "medium" ? MediumM3 : null;
            IsSizedByWord = true;
            ToMend = ToMend with { VolumeM3 = HeapToMend.VolumeOf(size) };
            facts.Add(new ChoiceFact(model.Field("heap.size"), size));
            answered.Add("heap.size");
        }
    }

    private void CheckSize(double volume, string? size)
    {
        const double Roughly = 2; // by which a guess by eye may be out
        var (least, most) = size switch
        {
            "bucket" => (0, 0.03),
            "small" => (0, 0.4),
            "medium" => (0.4, 1.5),
            "large" => (1.5, 5),
            "tractor_size" => (5, double.MaxValue),
            _ => (0, double.MaxValue),
        };
        if (size is not null && (volume * Roughly < least || volume / Roughly > most))
        {
            clashes.Say(
                "volume_not_size",
                clashes.Measures.Heap(volume),
                new DiagnoseWording(clashes.Measures).Word("heap.size", size)
            );
        }
    }

    private double? OfSides(InputFields heap)
    {
        var height = heap["height_m"]?.Number(0.01, 20);
        var width = heap["width_m"]?.Number(0.01, 1000);
        var length = heap["length_m"]?.Number(0.01, 10_000);
        var container = heap["container"]?.Text();
        if ((height ?? width) is not { } least)
        {
            return null;
        }

        // Where a side is not said, the heap is taken as wide as high.
        var side = width ?? length ?? least;
        // A free heap is about half of the box round it, a round one three quarters.
        var filled = container switch
        {
            "windrow" => 0.6,
            "open" => 0.5,
            "ring" or "tub" or "lidded_bin" or "turning_bin" when length is null => Math.PI / 4,
            _ => 1,
        };
        var volume = (height ?? Math.Min(side, 1.2)) * side * (length ?? side) * filled;
        if (heap["volume_m3"] is null)
        {
            assumptions.Say("signs.volume_of_sides", assumptions.Measures.Heap(volume));
        }

        return volume;
    }

    private void Contents(Input? input, ulong seed)
    {
        var parts = ImmutableArray.CreateBuilder<HeapPart>();
        foreach (var item in input?.Items(0, 60) ?? [])
        {
            var fields = item.Fields("material", "name", "share", "stored_days");
            var share = fields["share"]?.Choice([.. DiagnoseWords.Shares]) switch
            {
                "only" => HeapShare.Only,
                "most" => HeapShare.Most,
                "some" => HeapShare.Some,
                "little" => HeapShare.Little,
                _ => HeapShare.NotSaid,
            };
            var stored = fields["stored_days"]?.Number(0, 20_000);
            if (Named(fields) is { } material)
            {
                parts.Add(new HeapPart(material, share, stored));
            }
        }

        if (parts.Count(p => p.Share == HeapShare.Only) > 1)
        {
            clashes.Say("two_only");
        }

        if (parts.Count > 0)
        {
            Materials = [.. parts.Select(p => p.Material)];
            facts.AddRange(HeapContents.Facts(model, parts.ToImmutable(), seed));
            var mixture = HeapContents.Mixed(parts.ToImmutable(), seed);
            ToMend = ToMend with
            {
                CarbonNitrogenRatio = mixture.Quantity(s => s.CarbonNitrogenRatio),
                CarbonPercent = mixture.Quantity(s => 100 * s.Matter.Carbon / s.Matter.DryMass),
            };
            answered.Add("heap.materials");
        }
    }

    private Material? Named(InputFields fields)
    {
        var library = LibraryReader.Library;
        if (fields["material"] is { } id)
        {
            return IngredientReader.OfLibrary(id, library);
        }

        var name = fields.Needed("name").Text();
        var match = MaterialSearch.CloseMatch(library, name);
        if (match is null)
        {
            assumptions.Say("signs.material_not_known", name);
        }
        else
        {
            assumptions.Say("mixtures.taken_for", name, match.Name, match.Id);
        }

        return match;
    }
}

using System.Collections.Immutable;

namespace Heapwright.Web.Pages.Guide;

/// <summary>A page of the guide; its words stand in Texts/Guide.resx under its id.</summary>
/// <param name="Id">The id, as in its address.</param>
/// <param name="Points">How many points it has.</param>
/// <param name="Sources">The publications it rests on, by their keys in data/references.bib.</param>
/// <param name="Cautions">The cautions that belong to it, by their codes.</param>
/// <param name="Url">Where what it tells is done.</param>
public sealed record GuideTopic(
    string Id,
    int Points,
    ImmutableArray<string> Sources,
    ImmutableArray<string> Cautions,
    string Url
)
{
    /// <summary>The page on how forecasts are made, which shows how good past ones were.</summary>
    public const string Forecasts = "forecasts";

    /// <summary>The page on water, which shows the squeezes.</summary>
    public const string Water = "water";

    /// <summary>All pages, in the order of the work.</summary>
    public static ImmutableArray<GuideTopic> All { get; } =
    [
        new(
            "mix",
            5,
            [
                "cooperband2002",
                "composting_handbook_2022",
                "cornell_chemistry",
                "jenkins_table_3_2",
                "common_practice",
            ],
            [],
            "/mix"
        ),
        new(
            Water,
            5,
            ["cooperband2002", "composting_handbook_2022", "unl_lincoln_2020", "common_practice"],
            ["legionella_dust"],
            "/signs"
        ),
        new(
            "build",
            5,
            ["technical_note_24", "cooperband2002", "ifas_sarasota", "common_practice"],
            ["chipper_safety", "sharp_thorns", "treated_wood", "attracts_animals"],
            "/recipe"
        ),
        new("reading", 5, ["cornell_physics", "common_practice"], ["hot_heap"], "/reading"),
        new(
            "turning",
            5,
            ["osu_extension_2018", "ifas_sarasota", "common_practice"],
            ["before_turning", "legionella_dust", "hot_heap"],
            "/heaps"
        ),
        new(
            "smells",
            6,
            ["leduc", "uvm_plant_soil", "northumberland_on", "ifas_sarasota"],
            ["smoke_keep_away"],
            "/signs"
        ),
        new(
            "heat",
            5,
            [
                "wis_nr204",
                "psrp_training_table",
                "bioabfv_2012",
                "tompkins1998",
                "larney2003",
                "thompson1997",
            ],
            ["computed_heat", "record_of_heat"],
            "/heat-proof"
        ),
        new(
            "curing",
            5,
            ["ccme_2005", "wsu_compost_values", "nc_compost_use", "uc_davis_hartz", "wsu_bioassay"],
            ["finished_compost", "herbicide_in_compost", "manure_in_compost", "salt_in_compost"],
            "/finish"
        ),
        new(
            "safety",
            0,
            ["worksafe_qld"],
            [
                "legionella_dust",
                "hot_heap",
                "fire_in_heap",
                "smoke_keep_away",
                "before_turning",
                "chipper_safety",
                "sharp_thorns",
                "raw_manure",
                "herbicide_residue",
                "treated_wood",
                "pet_faeces_never",
                "glass_plastic",
                "animals_no_poison",
            ],
            "/materials"
        ),
        new(Forecasts, 5, ["haug1993", "rosso1993", "own_derivation"], ["computed_heat"], "/heaps"),
    ];

    /// <summary>Its title.</summary>
    public string Title => Showing.Say.Of($"guide.{Id}_title");

    /// <summary>What it is about, in one sentence.</summary>
    public string Lead => Showing.Say.Of($"guide.{Id}_lead");

    /// <summary>What it tells, in points.</summary>
    public IEnumerable<string> Told =>
        Enumerable
            .Range(1, Points)
            .Select(i =>
                Showing.Say.Of(
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"guide.{Id}_{i}"
                    )
                )
            );

    /// <summary>The page of an id; null for none.</summary>
    /// <param name="id">The id.</param>
    public static GuideTopic? Find(string id) =>
        All.FirstOrDefault(t => string.Equals(t.Id, id, StringComparison.Ordinal));

    /// <summary>The pages in which a word stands, upper and lower case alike.</summary>
    /// <param name="word">The word.</param>
    public static IEnumerable<GuideTopic> With(string word) =>
        All.Where(t =>
            t.Told.Append(t.Title)
                .Append(t.Lead)
                .Any(s => s.Contains(word, StringComparison.CurrentCultureIgnoreCase))
        );
}

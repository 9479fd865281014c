namespace Heapwright.Validation.Fuzzing;

/// <summary>Valid questions of every command, from which wrong ones are made.</summary>
internal static class Questions
{
    public static readonly (string Command, string Json)[] All =
    [
        (
            "mix",
            """
            {"schema":1,"ingredients":[
              {"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},
              {"name":"autumn leaves","amount":{"value":{"low":2,"typical":3,"high":4},"unit":"bag"},"moisture_pct_wb":30},
              {"name":"own stuff","amount":{"value":12.5,"unit":"kg"},"carbon_pct_db":45,"nitrogen_pct_db":1.5,
               "carbon_nitrogen_ratio":30,"moisture_pct_wb":{"low":40,"typical":50,"high":60},"bulk_density_kg_m3":250,
               "ash_pct_db":8,"lignin_pct_db":12}],
             "water_l":15,"containers":{"bag":{"l":70,"heaped":false},"tub":35},"mixing_volume_factor":0.85,"seed":3}
            """
        ),
        (
            "solve",
            """
            {"find":"mass_of_second","for":"moisture_pct_wb","target":60,
             "first":{"mass_kg":10,"moisture_pct_wb":77},"second":{"moisture_pct_wb":35}}
            """
        ),
        (
            "solve",
            """
            {"find":"mass_of_second","for":"carbon_nitrogen_ratio","target":30,
             "first":{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"bucket"}},
             "second":{"name":"leaves","carbon_pct_db":50,"nitrogen_pct_db":0.75,"moisture_pct_wb":35},"containers":{"bucket":14}}
            """
        ),
        (
            "solve",
            """
            {"find":"water","target_moisture_pct_wb":55,
             "ingredients":[{"amount":{"value":100,"unit":"lb"},"moisture_pct_wb":35},{"material":"wheat_straw","mass_kg":5}]}
            """
        ),
        (
            "solve",
            """
            {"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":55},
             "fixed":[{"mass_kg":50,"moisture_pct_wb":12,"carbon_pct_db":56,"nitrogen_pct_db":0.7}],
             "unknown":[{"moisture_pct_wb":69,"carbon_pct_db":48,"nitrogen_pct_db":8},"water"]}
            """
        ),
        (
            "recipe",
            """
            {"have":[
               {"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"},"whole_units":true,"must_use":true,"spoils_in_days":1},
               {"name":"own browns","amount":{"value":4,"unit":"bag"},"carbon_pct_db":46,"nitrogen_pct_db":0.7,"moisture_pct_wb":20,
                "bulk_density_kg_m3":80,"ash_pct_db":8}],
             "can_buy":[{"material":"wheat_straw","unit":"bale","price":9.5,"limit":2}],
             "bin":{"shape":"box","length_m":1.2,"width_m":1,"height_m":1},"weather":{"air_c":12},"aim":"use_most","chance":0.6,
             "bands":{"carbon_nitrogen_ratio":{"low":20,"high":40},"moisture_pct_wb":{"low":45,"high":65},"free_air_space_pct":null},
             "mixing_volume_factor":{"low":0.75,"typical":0.85,"high":0.95},"seed":2,"schema":1}
            """
        ),
        (
            "recipe",
            """
            {"have":[{"material":"leaves_mixed_dry","amount":{"value":2,"unit":"bag"}}],
             "volume_m3":{"low":0.2,"high":0.8},
             "onto":{"volume_m3":0.4,"age_days":10,"core_c":50,
                     "ingredients":[{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"bag"}}]}}
            """
        ),
        (
            "build",
            """
            {"name":"Bay 1","ingredients":[
               {"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},
               {"material":"leaves_mixed_dry","amount":{"value":5,"unit":"wheelbarrow"}},
               {"material":"kitchen_scraps","amount":{"value":4,"unit":"bucket"}}],
             "water_l":40,"bin":{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1},"containers":{"bucket":14},"seed":1}
            """
        ),
        (
            "build",
            """
            {"schema":1,"plans":[{"number":1,"use":[{"material":"wheat_straw","name":"straw","amount":{"value":1,"unit":"bale"},"l":400,"kg":20},
               {"material":"horse_manure_straw","amount":{"value":3,"unit":"wheelbarrow"}}],"buy":[],"water_l":60,"cost":0,"notes":[]}],
             "bin":{"shape":"ring","diameter_m":1.2,"height_m":1},"status":"ok","number":1}
            """
        ),
        (
            "guess",
            """{"freshness":"fresh","kind":"leafy","colour":"green","feel":"wet and soft"}"""
        ),
    ];
}

using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>Asked by a reader of German, a question has the same figures and no sentence that is half English.</summary>
public class GermanAnswersTests
{
    private const string Stuff = """
        [{"material":"grass_clippings_fresh","amount":{"value":3,"unit":"wheelbarrow"}},
         {"name":"Laub","amount":{"value":6,"unit":"bag"}},
         {"material":"wood_chips_coarse","amount":{"value":3,"unit":"wheelbarrow"}},
         {"name":"Küchenabfälle","amount":{"value":4,"unit":"bucket"}},
         {"name":"Pferdemist","amount":{"value":2,"unit":"wheelbarrow"}}]
        """;

    private static readonly string[] Codes =
    [
        "id",
        "material",
        "unit",
        "status",
        "verdict",
        "class",
        "stage",
        "kind",
        "source",
        "role",
        "heats",
    ];

    private const string Bin = """{"shape":"box","length_m":1.2,"width_m":1.2,"height_m":1.1}""";

    private const string Signs = """
        {"heap":{"volume_m3":1,"age_days":9,"container":"bay","covered":"none",
          "materials":[{"name":"Rasenschnitt","share":"most"},{"name":"Laub","share":"some"}]},
         "weather":{"season":"spring","lately":["wet"]},
         "readings":[{"day":3,"temperature_c":55},{"day":6,"temperature_c":48},{"day":9,"temperature_c":31}],
         "signs":{"squeeze":{"core":"drips"},"smell":["rotten"],"see":["matted"]},"worry":["cooled","smell"]}
        """;

    private const string Finished = """
        {"self_heating":{"ambient_c":20,"readings":[{"day":0,"temperature_c":20},{"day":2,"temperature_c":28},{"day":6,"temperature_c":24}]},
         "seed_test":{"sown":25,"germinated":22,"root_mm":21,"control":{"sown":25,"germinated":24,"root_mm":24}},
         "smell":["earthy"],"see":["crumbly"],"ash":{"before_pct_db":10,"after_pct_db":25},
         "start":{"mass_kg":520,"moisture_pct_wb":58,"volume_m3":1.3},"end":{"volume_l":420},"manure":true,"shown_hot":false,
         "beds":[{"name":"Kohlbeet","area_m2":6,"crop":"Kohl","depth_cm":3}]}
        """;

    [Fact]
    public void Mix_InGerman_HasTheSameFiguresInGermanWords()
    {
        var text = Same(() =>
            MixAnswers.Answer(
                BuildAnswersTests.Question($$"""{"ingredients":{{Stuff}},"water_l":10}""")
            )
        );
        Assert.Contains("Rasenschnitt, frisch", text, StringComparison.Ordinal);
        Assert.Contains("„Laub“ gilt als Herbstlaub", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Recipe_InGerman_HasTheSameFiguresInGermanWords()
    {
        var text = Same(() =>
            RecipeAnswers.Answer(
                BuildAnswersTests.Question(
                    $$"""{"have":{{Stuff}},"can_buy":[{"material":"straw_general","unit":"bale","price":9.5,"limit":2}],"bin":{{Bin}} }"""
                )
            )
        );
        Assert.Contains("Rasenschnitt, frisch", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Recipe_InGermanAfterEnglish_NamesWhatIsMissingInGerman()
    {
        var text = Same(() =>
            RecipeAnswers.Answer(
                BuildAnswersTests.Question(
                    $$"""{"have":[{"material":"wheat_straw","amount":{"value":3,"unit":"wheelbarrow"} }],"bin":{{Bin}} }"""
                )
            )
        );
        Assert.Contains("Was es brächte:", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_InGerman_HasTheSameFiguresInGermanWords()
    {
        var text = Same(() =>
            BuildAnswers.Answer(
                BuildAnswersTests.Question(
                    $$"""{"ingredients":{{Stuff}},"water_l":40,"bin":{{Bin}} }"""
                )
            )
        );
        Assert.Contains("Bevor du anfängst", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Simulate_InGerman_HasTheSameFiguresInGermanWords() =>
        Same(() =>
            SimulateAnswers.Answer(
                BuildAnswersTests.Question(
                    $$"""{"ingredients":{{Stuff}},"water_l":40,"bin":{{Bin}},"days":3,"members":1}"""
                ),
                SimulateLimits.CommandLine(readTable: null)
            )
        );

    [Fact]
    public void Diagnose_InGerman_HasTheSameFiguresInGermanWords()
    {
        var text = Same(() => DiagnoseAnswers.Answer(BuildAnswersTests.Question(Signs)));
        Assert.Contains("Zu wenig Luft", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Finish_InGerman_HasTheSameFiguresInGermanWords()
    {
        var text = Same(() => FinishAnswers.Answer(BuildAnswersTests.Question(Finished)));
        Assert.Contains("120 Tage vom Ausbringen bis zur Ernte", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Hygiene_InGerman_HasTheSameFiguresInGermanWords() =>
        Same(() =>
            HygieneAnswers.Answer(
                BuildAnswersTests.Question(
                    """
                    {"process":"bin","readings":[{"day":0,"probe":"A","temperature_c":56},{"day":1,"probe":"A","temperature_c":58},
                     {"day":2,"probe":"A","temperature_c":57},{"day":5,"probe":"A","temperature_c":55}],"turns":[]}
                    """
                )
            )
        );

    // The answer in both languages; returns the German text.
    private static string Same(Func<Answer> ask)
    {
        var english = In("en", ask);
        var german = In("de", ask);
        Assert.NotEqual(english.Text, german.Text);
        Assert.Equal(Figures(english.Json), Figures(german.Json));
        TestContext.Current.TestOutputHelper?.WriteLine(german.Text);
        Assert.Equal([], English(german.Text));
        return german.Text;
    }

    // Everything but sentences and names: figures, and the codes of what they are about.
    private static IEnumerable<string> Figures(JsonNode? json, string path = "") =>
        json switch
        {
            JsonObject all => all.SelectMany(p => Figures(p.Value, path + "." + p.Key)),
            JsonArray all => all.SelectMany((v, i) => Figures(v, $"{path}[{i}]")),
            JsonValue value when value.GetValueKind() == JsonValueKind.String => Codes.Any(c =>
                path.EndsWith("." + c, StringComparison.Ordinal)
            )
                ? [path + " " + value.GetValue<string>()]
                : [path],
            _ => [path + " " + (json?.ToJsonString() ?? "null")],
        };

    // What publications are called stays as it is.
    private static IEnumerable<string> English(string text) =>
        text.Split('\n')
            .Where(l =>
                !l.Contains("Quelle", StringComparison.Ordinal)
                && !l.Contains(" (gedruckt gesehen)", StringComparison.Ordinal)
                && !l.Contains(" (aus dem Gedächtnis)", StringComparison.Ordinal)
                && !l.Contains("über einer Grenze.", StringComparison.Ordinal)
            )
            .Where(l =>
                Regex.IsMatch(
                    l,
                    @"\b(?:the|and|of|is|with|not|heap|layer|at)\b",
                    RegexOptions.None,
                    TimeSpan.FromSeconds(5)
                )
            );

    private static Answer In(string language, Func<Answer> ask)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
        try
        {
            return ask();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }
}

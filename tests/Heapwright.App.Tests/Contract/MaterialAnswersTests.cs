using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

public class MaterialAnswersTests
{
    private static readonly string[] Ranges =
    [
        "nitrogen_pct_db",
        "carbon_pct_db",
        "carbon_nitrogen_ratio",
        "moisture_pct_wb",
        "bulk_density_kg_m3",
        "ash_pct_db",
        "lignin_pct_db",
        "phosphorus_pct_db",
        "potassium_pct_db",
        "fast_pct_db",
        "slow_pct_db",
        "lignin_rich_pct_db",
    ];

    private static readonly string[] Kinds = ["printed", "from_memory", "derived", "estimate"];

    [Fact]
    public void List_EveryMaterial_HasEveryFieldOfTheContract()
    {
        var answer = MaterialAnswers.List();
        Assert.Equal(1, (int)answer["schema"]!);
        Assert.IsType<JsonArray>(answer["assumptions"]);
        Assert.IsType<JsonArray>(answer["cautions"]);
        var materials = answer["materials"]!.AsArray();
        Assert.NotEmpty(materials);
        foreach (var material in materials)
        {
            CheckMaterial(material!.AsObject());
        }
    }

    [Fact]
    public void Search_Words_BestFirst()
    {
        var found = MaterialAnswers.Search("lawn mowings")["materials"]!.AsArray();
        Assert.Equal("grass_clippings_fresh", (string)found[0]!["id"]!);
    }

    [Fact]
    public void Search_Nonsense_IsAnEmptyList() =>
        Assert.Empty(MaterialAnswers.Search("qwxyz")["materials"]!.AsArray());

    [Fact]
    public void Show_KnownId_IsThatMaterial()
    {
        var answer = MaterialAnswers.Show("wheat_straw");
        Assert.Equal(1, (int)answer["schema"]!);
        Assert.Equal("wheat_straw", (string)answer["id"]!);
        Assert.NotEmpty(answer["assumptions"]!.AsArray());
        CheckMaterial(answer);
    }

    [Fact]
    public void Show_UnknownId_NamesTheNearest()
    {
        var problem = Assert.Throws<InputProblem>(() => MaterialAnswers.Show("wheat_strow"));
        Assert.Contains("wheat_strow", problem.Message, StringComparison.Ordinal);
        Assert.Contains("\"wheat_straw\"", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\r\u0000")]
    [InlineData("qwxyz")]
    public void Show_AnyOtherId_IsOneClearLine(string id)
    {
        var problem = Assert.Throws<InputProblem>(() => MaterialAnswers.Show(id));
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Fact]
    public void Guess_AllFourFields_IsAMaterialWithWideRanges()
    {
        var answer = Guess(
            """{"freshness":"dry","kind":"leafy","colour":"brown","feel":"crisp"}"""
        );
        CheckMaterial(answer);
        Assert.Equal(1, (int)answer["schema"]!);
        var nitrogen = answer["nitrogen_pct_db"]!;
        Assert.True((double)nitrogen["high"]! > 1.5 * (double)nitrogen["low"]!);
    }

    [Theory]
    [InlineData(
        """{"freshness":"dry","kind":"leafy","colour":"green"}""",
        """{"freshness":"dry","kind":"leafy","colour":"brown"}""",
        "nitrogen_pct_db"
    )]
    [InlineData(
        """{"freshness":"aged","kind":"leafy","feel":"dripping"}""",
        """{"freshness":"aged","kind":"leafy","feel":"crisp"}""",
        "moisture_pct_wb"
    )]
    [InlineData(
        """{"freshness":"fresh","kind":"stemmy","feel":"woody"}""",
        """{"freshness":"fresh","kind":"stemmy","feel":"tender"}""",
        "lignin_pct_db"
    )]
    public void Guess_ColourAndFeel_ShiftWhatTheyTellOf(string more, string less, string field)
    {
        Assert.True(
            (double)Guess(more)[field]!["typical"]! > 1.1 * (double)Guess(less)[field]!["typical"]!
        );
    }

    [Fact]
    public void Guess_WordsThatTellNothing_AreTakenAndSaid()
    {
        var answer = Guess(
            """{"freshness":"aged","kind":"manure","colour":"Dark-brownish","feel":"crumbly, a bit springy"}"""
        );
        var assumptions = answer["assumptions"]!.AsArray().Select(a => (string)a!).ToList();
        Assert.Contains(
            assumptions,
            a => a.Contains("colour tells nothing", StringComparison.Ordinal)
        );
        Assert.Contains(
            assumptions,
            a => a.Contains("feel tells neither", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("""{"freshness":"dry","kind":"leafy","colour":"brwn"}""", "\"brown\"")]
    [InlineData("""{"freshness":"dry","kind":"leafy","feel":"crsp"}""", "\"crisp\"")]
    [InlineData("""{"freshness":"dri","kind":"leafy"}""", "\"dry\"")]
    [InlineData("""{"freshness":"dry","kind":"leefy"}""", "\"leafy\"")]
    [InlineData("""{"freshness":"dry","kind":"leafy","color":"brown"}""", "\"colour\"")]
    [InlineData("""{"freshness":"dry"}""", "\"kind\"")]
    [InlineData("""{"freshness":"dry","kind":"leafy","feel":3}""", "text")]
    public void Guess_WordNotKnown_IsRefusedWithTheNearest(string question, string nearest)
    {
        var problem = Assert.Throws<InputProblem>(() => Guess(question));
        Assert.Contains(nearest, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Guess_EveryKindAndFreshness_Answers()
    {
        foreach (
            var kind in (string[])
                ["leafy", "stemmy", "woody", "fruity", "seedy", "papery", "manure", "meal", "soily"]
        )
        {
            foreach (var freshness in (string[])["fresh", "wilted", "dry", "aged"])
            {
                CheckMaterial(Guess($$"""{"freshness":"{{freshness}}","kind":"{{kind}}"}"""));
            }
        }
    }

    private static JsonObject Guess(string question) =>
        MaterialAnswers.Guess(Input.Read(Encoding.UTF8.GetBytes(question), "question"));

    private static void CheckMaterial(JsonObject material)
    {
        var id = (string)material["id"]!;
        Assert.False(string.IsNullOrWhiteSpace(id));
        Assert.False(string.IsNullOrWhiteSpace((string)material["name"]!), id);
        Assert.IsType<JsonArray>(material["also_called"]);
        foreach (var field in (string[])["group", "family", "kind", "state", "advice"])
        {
            Assert.False(string.IsNullOrWhiteSpace((string)material[field]!), $"{id} {field}");
        }

        Assert.Contains(
            (string)material["counts_as"]!,
            (string[])["green", "brown", "structure", "soil", "other"]
        );
        Assert.NotNull(material["prepare"]);
        foreach (var caution in material["cautions"]!.AsArray())
        {
            Assert.False(string.IsNullOrWhiteSpace((string)caution!["id"]!));
            Assert.False(string.IsNullOrWhiteSpace((string)caution["text"]!));
            Assert.False(string.IsNullOrWhiteSpace((string)caution["why"]!));
        }

        var sources = material["sources"]!.AsArray();
        foreach (var source in sources)
        {
            Assert.Contains((string)source!["kind"]!, Kinds);
            Assert.False(string.IsNullOrWhiteSpace((string)source["source"]!));
        }

        var sourced = sources.Select(s => (string)s!["field"]!).ToHashSet(StringComparer.Ordinal);
        foreach (var field in Ranges)
        {
            var range = material[field];
            Assert.True(range is not null, $"{id} has no {field}");
            var low = (double)range["low"]!;
            var typical = (double)range["typical"]!;
            var high = (double)range["high"]!;
            Assert.True(
                0 <= low && low <= typical && typical <= high,
                $"{id} {field}: {low} {typical} {high}"
            );
            Assert.True(sourced.Contains(field), $"{id} {field} has no source");
        }
    }
}

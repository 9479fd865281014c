using System.Text;
using System.Text.Json.Nodes;
using Heapwright.Cli;
using Heapwright.Cli.Commands;

namespace Heapwright.App.Tests.Cli;

/// <summary>The real commands with <c>--units</c>.</summary>
public sealed class UnitsTests
{
    private const string Ingredients = """
        "ingredients":[
          {"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}},
          {"material":"leaves_mixed_dry","amount":{"value":6,"unit":"bag"}}],
        "water_l":40
        """;

    public static TheoryData<string, string> Commands =>
        new()
        {
            { "mix", "{" + Ingredients + "}" },
            {
                "build",
                "{"
                    + Ingredients
                    + ",\"bin\":{\"shape\":\"box\",\"length_m\":1,\"width_m\":1,\"height_m\":1}}"
            },
            {
                "recipe",
                """
                    {"have":[{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}},
                             {"material":"leaves_mixed_dry","amount":{"value":6,"unit":"bag"}}],"seed":1}
                    """
            },
            {
                "solve",
                """
                    {"find":"water","target_moisture_pct_wb":60,"ingredients":[{"mass_kg":10,"moisture_pct_wb":20}]}
                    """
            },
            { "materials guess", """{"freshness":"dry","kind":"leafy"}""" },
        };

    [Theory]
    [MemberData(nameof(Commands))]
    public void Text_InUsUnits_NamesNoMetricOnes(string command, string question)
    {
        var (status, text) = Run(command, question, "--units", "us");

        Assert.Equal(0, status);
        Assert.DoesNotMatch(@"[0-9] ?(kg|L|l|cm|m|m³|°C)\b|kg/m³", Said(text));
        Assert.Matches(@"gal|lb|\bin\b|°F", text);
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Text_InMetricUnits_NamesNoOthers(string command, string question)
    {
        var (status, text) = Run(command, question, "--units", "metric");

        Assert.Equal(0, status);
        Assert.DoesNotMatch(@"[0-9] ?(lb|gal|ft|in|°F)\b|lb/yd³", Said(text));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Json_InAnyUnits_IsTheSame(string command, string question)
    {
        var (_, metric) = Run(command, question, "--json");
        var (status, us) = Run(command, question, "--json", "--units", "us");

        Assert.Equal(0, status);
        Assert.Equal(metric, us);
        Assert.NotNull(JsonNode.Parse(us));
    }

    [Fact]
    public void Solve_WaterInUsGallons_IsConverted()
    {
        // 10 kg at 20 % hold 8 kg dry: 12 kg of water at 60 %, 10 more are needed, 2.64 US gallons.
        var (_, question) = Commands.Select(c => c.Data).Last(c => c.Item1 == "solve");

        Assert.Equal("10 L of water\n", Run("solve", question).Text);
        Assert.Equal("2.64 gal of water\n", Run("solve", question, "--units", "us").Text);
        Assert.Equal("2.2 UK gal of water\n", Run("solve", question, "--units", "uk").Text);
    }

    [Fact]
    public void Units_OfTheEnvironment_HoldUnlessTheOptionSaysOtherwise()
    {
        var (_, question) = Commands.Select(c => c.Data).Last(c => c.Item1 == "solve");
        var terminal = Typed(question);
        terminal.Variables["HEAPWRIGHT_UNITS"] = "uk";
        Assert.Equal(0, CommandLine.Run(["solve", "--input=-"], CommandTable.All, terminal));
        Assert.Equal("2.2 UK gal of water\n", terminal.Output);

        terminal = Typed(question);
        terminal.Variables["HEAPWRIGHT_UNITS"] = "uk";
        CommandLine.Run(["solve", "--input=-", "--units=metric"], CommandTable.All, terminal);
        Assert.Equal("10 L of water\n", terminal.Output);
    }

    [Theory]
    [InlineData("--units=si", "", "heapwright: --units \"si\" is not known; metric, us, uk are")]
    [InlineData(
        "",
        "imperial",
        "heapwright: HEAPWRIGHT_UNITS \"imperial\" is not known; metric, us, uk are"
    )]
    public void Units_ThatAreNone_AreRefusedInOneSentence(
        string option,
        string variable,
        string sentence
    )
    {
        var terminal = Typed("{}");
        terminal.Variables["HEAPWRIGHT_UNITS"] = variable;
        string[] args = ["materials", "list"];

        var status = CommandLine.Run(
            option.Length > 0 ? [.. args, option] : args,
            CommandTable.All,
            terminal
        );

        Assert.Equal(2, status);
        Assert.Equal([sentence], terminal.Complaints);
        Assert.Empty(terminal.Output);
    }

    // The cautions are the same for everybody and name both; dimensions given as words of the asker stay.
    private static string Said(string text) => text.Split("Take care:")[0].Split("Cautions")[0];

    private static (int Status, string Text) Run(
        string command,
        string question,
        params string[] more
    )
    {
        var terminal = Typed(question);
        var status = CommandLine.Run(
            [.. command.Split(' '), "--input=-", .. more],
            CommandTable.All,
            terminal
        );
        Assert.Empty(terminal.Complaints);
        return (status, terminal.Output);
    }

    private static MemoryTerminal Typed(string question) =>
        new() { Input = new MemoryStream(Encoding.UTF8.GetBytes(question)) };
}

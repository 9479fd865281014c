using Heapwright.Architecture.Rules;

namespace Heapwright.Architecture;

public sealed class RuleTests
{
    // Those that are built; Cluster and Storage.Postgres come with later work.
    private static readonly string[] Built =
    [
        "Numerics",
        "Core",
        "App",
        "Storage",
        "Storage.Sqlite",
        "Web",
        "Cli",
    ];

    private static readonly Dictionary<string, IReadOnlyList<Subject>> Real = Built.ToDictionary(
        place => place,
        Places.Real,
        StringComparer.Ordinal
    );

    public static TheoryData<string> Ids =>
        [.. RuleBook.All.Where(r => Built.Contains(r.Place)).Select(r => r.Id)];

    public static TheoryData<string> IdsWithASample =>
        [.. RuleBook.All.Where(r => r.Caught.Length > 0).Select(r => r.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Code_AsBuilt_KeepsTheRule(string id)
    {
        var rule = Rule(id);

        Assert.Empty(rule.Against(Real[rule.Place]).Select(f => $"{f.Type}: {f.Fault}"));
    }

    [Theory]
    [MemberData(nameof(IdsWithASample))]
    public void Sample_WrongOnPurpose_IsCaughtByTheRule(string id)
    {
        var rule = Rule(id);

        var caught = rule.Against(Places.Wrong(rule.Place)).Select(f => f.Type).ToHashSet();

        Assert.Superset(rule.Caught.ToHashSet(), caught);
    }

    [Fact]
    public void Sample_EachRule_CatchesNoMoreThanItShould()
    {
        // A rule that rejects everything would pass the test above; this one knows its limits.
        var keepsState = Rule("core_keeps_no_state").Against(Places.Wrong("Core"));
        var looksRight = Rule("core_stages_look_left").Against(Places.Wrong("Core"));
        var knowsApp = Rule("core_knows_numerics_only").Against(Places.Wrong("Core"));

        Assert.Equal(["KeepsState"], keepsState.Select(f => f.Type).Distinct());
        Assert.Equal(["LooksRight"], looksRight.Select(f => f.Type).Distinct());
        Assert.Equal(["KnowsTheApp"], knowsApp.Select(f => f.Type).Distinct());
    }

    [Theory]
    [InlineData("Numerics")]
    [InlineData("Core")]
    [InlineData("App")]
    [InlineData("Cli")]
    [InlineData("Web")]
    public void Place_AsBuilt_HasTypesToJudge(string place) => Assert.NotEmpty(Real[place]);

    private static Rule Rule(string id) => RuleBook.All.Single(r => r.Id == id);
}

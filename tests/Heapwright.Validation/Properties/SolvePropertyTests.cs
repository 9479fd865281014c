using System.Text.Json.Nodes;
using CsCheck;
using Heapwright.App.Contract;

namespace Heapwright.Validation.Properties;

/// <summary>What is solved for is put back into a mixture: the target must come out.</summary>
public class SolvePropertyTests(ITestOutputHelper output)
{
    private static readonly Gen<(double C, double N, double M)> Own = Gen.Select(
        Gen.Double[30, 52],
        Gen.Double[0.3, 5],
        Gen.Double[5, 85]
    );

    [Fact]
    public void SecondMass_PutIntoTheMixture_HasTheTarget() =>
        Gen.Select(Own, Own, Gen.Double[0.1, 50], Gen.Double[0.02, 0.98], Gen.Bool)
            // Between two equal values there is no target that the first does not have already.
            .Where((a, b, _, _, moisture) => moisture ? a.M != b.M : a.C / a.N != b.C / b.N)
            .Sample(
                (a, b, mass, where, moisture) =>
                {
                    var (from, to) = moisture ? (a.M, b.M) : (a.C / a.N, b.C / b.N);
                    var target = from + (where * (to - from));
                    var field = moisture ? "moisture_pct_wb" : "carbon_nitrogen_ratio";
                    var answer = Ask.Solve(
                        $$"""{"find":"mass_of_second","for":"{{field}}","target":{{Known.Text(target)}},"first":{"mass_kg":{{Known.Text(mass)}},{{Json(a)}} },"second":{{{Json(b)}} } }"""
                    );
                    Assert.True(answer.Yes);
                    var second = answer.Json["mass_kg"].Number();
                    Assert.True(second > 0);
                    var mixed = Mixed(0, (a, mass), (b, second));
                    Assert.Equal(target, mixed[field].Typical(), 1e-7 * target);
                },
                writeLine: output.WriteLine,
                iter: 100
            );

    // A target outside both has no answer, whichever side it lies on.
    [Fact]
    public void SecondMass_TargetOutsideBoth_IsRefusedWithAReason() =>
        Gen.Select(Own, Own, Gen.Double[0.01, 0.5], Gen.Bool)
            .Sample(
                (a, b, beyond, above) =>
                {
                    var target = above
                        ? Math.Max(a.M, b.M) + (beyond * (99.8 - Math.Max(a.M, b.M)))
                        : Math.Min(a.M, b.M) * (1 - beyond);
                    var answer = Ask.Solve(
                        $$"""{"find":"mass_of_second","for":"moisture_pct_wb","target":{{Known.Text(target)}},"first":{"mass_kg":3,{{Json(a)}} },"second":{{{Json(b)}} } }"""
                    );
                    Assert.False(answer.Yes);
                    Assert.NotEmpty(answer.Json["cannot"]!["why"].Word());
                    Assert.Null(answer.Json["mass_kg"]);
                },
                writeLine: output.WriteLine,
                iter: 50
            );

    [Fact]
    public void Water_PutIntoTheMixture_HasTheTarget() =>
        Gen.Select(Own, Gen.Double[0.1, 50], Gen.Double[0, 99])
            .Sample(
                (a, mass, target) =>
                {
                    var answer = Ask.Solve(
                        $$"""{"find":"water","target_moisture_pct_wb":{{Known.Text(target)}},"ingredients":[{"mass_kg":{{Known.Text(mass)}},{{Json(a)}} }]}"""
                    );
                    Assert.Equal(target >= a.M, answer.Yes);
                    if (answer.Yes)
                    {
                        var mixed = Mixed(answer.Json["water_l"].Number(), (a, mass));
                        Assert.Equal(target, mixed["moisture_pct_wb"].Typical(), 1e-9 * 100);
                    }
                    else
                    {
                        Assert.NotEmpty(answer.Json["cannot"]!["why"].Word());
                    }
                },
                writeLine: output.WriteLine,
                iter: 100
            );

    [Fact]
    public void TwoUnknowns_PutIntoTheMixture_HaveBothTargets() =>
        Gen.Select(
                Own,
                Own,
                Own,
                Gen.Double[1, 50],
                Gen.Double[0.1, 20],
                Gen.Double[0.1, 20],
                Gen.Bool
            )
            .Sample(
                (fix, a, b, mass, x, y, water) =>
                {
                    // The targets of a mixture that exists, so that an answer exists: the one it was made from.
                    var made = water
                        ? Mixed(y, (fix, mass), (a, x))
                        : Mixed(0, (fix, mass), (a, x), (b, y));
                    var (ratio, moisture) = (
                        made["carbon_nitrogen_ratio"].Typical(),
                        made["moisture_pct_wb"].Typical()
                    );
                    var second = water ? "\"water\"" : $"{{{Json(b)}}}";
                    var answer = Ask.Solve(
                        $$"""{"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":{{Known.Text(ratio)}},"moisture_pct_wb":{{Known.Text(moisture)}} },"fixed":[{"mass_kg":{{Known.Text(mass)}},{{Json(fix)}} }],"unknown":[{{{Json(a)}} },{{second}}]}"""
                    );
                    Assert.True(answer.Yes, answer.Text);
                    var (p, q) = (
                        answer.Json["mass_kg"]![0].Number(),
                        answer.Json["mass_kg"]![1].Number()
                    );
                    var again = water
                        ? Mixed(q, (fix, mass), (a, p))
                        : Mixed(0, (fix, mass), (a, p), (b, q));
                    Assert.Equal(ratio, again["carbon_nitrogen_ratio"].Typical(), 1e-6 * ratio);
                    Assert.Equal(moisture, again["moisture_pct_wb"].Typical(), 1e-6 * moisture);
                    Assert.Equal(water ? q : 0, answer.Json["water_l"].Number());
                },
                writeLine: output.WriteLine,
                iter: 100
            );

    // Nothing more is needed where the target is what is there already; rounding must not turn that into "cannot".
    [Fact]
    public void Solve_TargetIsThereAlready_NeedsNothing() =>
        Gen.Select(Own, Own, Gen.Int[1, 995], Gen.Int[1, 999])
            .Sample(
                (a, b, tenths, kilograms) =>
                {
                    var moisture = Known.Text(tenths / 10.0);
                    var mass = Known.Text(kilograms / 10.0);
                    var second = Ask.Solve(
                        $$"""{"find":"mass_of_second","for":"moisture_pct_wb","target":{{moisture}},"first":{"mass_kg":{{mass}},"moisture_pct_wb":{{moisture}} },"second":{"moisture_pct_wb":{{Known.Text(b.M)}} } }"""
                    );
                    Assert.True(second.Yes, second.Text);
                    Assert.Equal(0, second.Json["mass_kg"].Number());
                    var water = Ask.Solve(
                        $$"""{"find":"water","target_moisture_pct_wb":{{moisture}},"ingredients":[{"amount":{"value":{{mass}},"unit":"lb"},"moisture_pct_wb":{{moisture}} }]}"""
                    );
                    Assert.True(water.Yes, water.Text);
                    Assert.Equal(0, water.Json["water_l"].Number());
                    var ratio = Ask.Solve(
                        $$"""{"find":"mass_of_second","for":"carbon_nitrogen_ratio","target":{{Known.Text(a.C / a.N)}},"first":{"mass_kg":{{mass}},{{Json(a)}} },"second":{{{Json(b)}} } }"""
                    );
                    Assert.True(ratio.Yes, ratio.Text);
                    Assert.Equal(0, ratio.Json["mass_kg"].Number());
                },
                writeLine: output.WriteLine,
                iter: 200
            );

    // The other way round: the second has exactly the target, so no amount of it makes the mixture equal to it.
    [Fact]
    public void SecondMass_TargetIsWhatTheSecondHas_IsRefused() =>
        Gen.Select(Gen.Int[1, 990], Gen.Int[1, 990])
            .Where((first, second) => first != second)
            .Sample(
                (first, second) =>
                {
                    var answer = Ask.Solve(
                        $$"""{"find":"mass_of_second","for":"moisture_pct_wb","target":{{Known.Text(second / 10.0)}},"first":{"mass_kg":7.1,"moisture_pct_wb":{{Known.Text(first / 10.0)}} },"second":{"moisture_pct_wb":{{Known.Text(second / 10.0)}} } }"""
                    );
                    Assert.False(answer.Yes, answer.Json.ToJsonString());
                },
                writeLine: output.WriteLine,
                iter: 200
            );

    // Nothing has no moisture and no ratio.
    [Theory]
    [InlineData(
        """{"find":"mass_of_second","for":"moisture_pct_wb","target":60,"first":{"mass_kg":0,"moisture_pct_wb":77},"second":{"moisture_pct_wb":35}}"""
    )]
    [InlineData(
        """{"find":"water","target_moisture_pct_wb":60,"ingredients":[{"mass_kg":0,"moisture_pct_wb":50}]}"""
    )]
    [InlineData(
        """{"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":55},"fixed":[{"mass_kg":0,"carbon_pct_db":45,"nitrogen_pct_db":1,"moisture_pct_wb":50}],"unknown":[{"carbon_pct_db":45,"nitrogen_pct_db":3,"moisture_pct_wb":50},"water"]}"""
    )]
    public void Solve_NothingThere_IsRefused(string question) =>
        Assert.Contains(
            "amount is 0",
            Assert.Throws<InputProblem>(() => Ask.Solve(question)).Message,
            StringComparison.Ordinal
        );

    // Stuff without nitrogen is said to have none; a number without end is not shown to anyone.
    [Fact]
    public void SecondMass_FirstWithoutNitrogen_SaysSo()
    {
        var answer = Ask.Solve(
            """
            {"find":"mass_of_second","for":"carbon_nitrogen_ratio","target":30,
             "first":{"mass_kg":7,"moisture_pct_wb":50,"carbon_pct_db":45,"nitrogen_pct_db":0},
             "second":{"moisture_pct_wb":33,"carbon_pct_db":45,"nitrogen_pct_db":1}}
            """
        );
        Assert.False(answer.Yes);
        Assert.Contains(
            "no nitrogen",
            answer.Json["cannot"]!["why"].Word(),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Infinity", answer.Text, StringComparison.Ordinal);
    }

    private static string Json((double C, double N, double M) own) =>
        $"\"carbon_pct_db\":{Known.Text(own.C)},\"nitrogen_pct_db\":{Known.Text(own.N)},\"moisture_pct_wb\":{Known.Text(own.M)}";

    private static JsonObject Mixed(
        double water,
        params ((double C, double N, double M) Own, double Mass)[] parts
    ) =>
        Ask.Mix(
            $$"""
            {"water_l":{{Known.Text(water)}},"ingredients":[{{string.Join(',', parts.Select((p, i) =>
                $$"""{"name":"zzq {{(char)('a' + i)}}",{{Json(p.Own)}},"amount":{"value":{{Known.Text(p.Mass)}},"unit":"kg"} }"""))}}]}
            """
        ).Json;
}

using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

public sealed class ChanceProblemTests
{
    [Fact]
    public void Check_NotANumber_NamesTheEntry()
    {
        ChanceProblem p = Simple(nominal: [1, double.NaN]);
        ArgumentException error = Assert.Throws<ArgumentException>(() => ChanceSearch.Solve(p));
        Assert.Contains("Nominal[1] is NaN", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_SizesThatDoNotFit_NameLengthAndWanted()
    {
        ChanceProblem p = Simple(nominal: [1, 1, 1]);
        ArgumentException error = Assert.Throws<ArgumentException>(() => ChanceSearch.Solve(p));
        Assert.Contains(
            "Nominal.Length is 3; allowed is 2",
            error.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(-1, "Upper[0] is -1")]
    [InlineData(2.5, "Upper[0] is 2.5")]
    [InlineData(double.PositiveInfinity, "Upper[0] is Infinity")]
    public void Check_BoundsOutOfRange_NameTheValue(double upper, string wanted)
    {
        ChanceProblem p = Simple(upper: upper);
        ArgumentException error = Assert.Throws<ArgumentException>(() => ChanceSearch.Solve(p));
        Assert.Contains(wanted, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_BudgetOfNoNodes_IsRefused()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() =>
            ChanceSearch.Solve(Simple(), new SearchBudget { Nodes = 0 })
        );
        Assert.Contains(
            "Nodes is 0; allowed is 1 or more",
            error.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Solve_OneVariable_TakesTheLeastThatIsNotZero()
    {
        ChanceProblem p = new()
        {
            Lower = [0],
            Upper = [5],
            Objectives =
            [
                [2],
            ],
            FreeSlopes = [0],
            Nominal = [1],
        };
        ChanceAnswer answer = ChanceSearch.Solve(p);
        Assert.Equal(SearchStatus.Optimal, answer.Status);
        Assert.Equal([1], answer.Amounts);
        Assert.Equal(2, answer.Objectives[0]);
        Assert.Equal(1, answer.Share);
    }

    [Fact]
    public void Solve_AllBoundsZero_IsProvenInfeasible()
    {
        ChanceAnswer answer = ChanceSearch.Solve(
            new ChanceProblem
            {
                Lower = [0, 0],
                Upper = [0, 0],
                Objectives =
                [
                    [1, 1],
                ],
                FreeSlopes = [],
                Nominal = [],
            }
        );
        Assert.Equal(SearchStatus.Infeasible, answer.Status);
    }

    /// <summary>Twenty-two variables, no spread: 11 of the dearest litres are not needed, so the cheapest way to 40 units is by hand.</summary>
    [Fact]
    public void Solve_ManyVariables_FillsWithTheCheapest()
    {
        const int N = 22;
        ChanceProblem p = new()
        {
            Lower = new double[N],
            Upper = [.. Enumerable.Repeat(10.0, N)],
            Objectives =
            [
                [.. Enumerable.Range(0, N).Select(i => 1.0 + i)],
            ],
            FreeSlopes = [],
            Nominal = [],
            LimitCoefficients = [.. Enumerable.Repeat(-1.0, N)],
            Limits = [-40],
        };
        ChanceAnswer answer = ChanceSearch.Solve(p);
        Assert.Equal(SearchStatus.Optimal, answer.Status);

        // 10 each of the four cheapest at 1, 2, 3 and 4.
        Assert.Equal(100, answer.Objectives[0]);
    }

    [Fact]
    public void Solve_SameProblemTwice_GivesTheSameBits()
    {
        for (int seed = 0; seed < 60; seed++)
        {
            ChanceAnswer a = ChanceSearch.Solve(RandomProblems.Make(seed));
            ChanceAnswer b = ChanceSearch.Solve(RandomProblems.Make(seed));
            Assert.Equal(a.Amounts, b.Amounts);
            Assert.Equal(a.Nodes, b.Nodes);
            Assert.Equal(
                BitConverter.DoubleToInt64Bits(a.Free),
                BitConverter.DoubleToInt64Bits(b.Free)
            );
        }
    }

    [Fact]
    public void Solve_StopAsked_EndsWithoutProof()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        ChanceProblem p = Hard();
        ChanceAnswer answer = ChanceSearch.Solve(p, new SearchBudget { Nodes = 300 });
        Assert.False(answer.ProvenBest);
        ChanceAnswer stopped = ChanceSearch.Solve(
            p,
            new SearchBudget { Cancellation = cancel.Token }
        );
        Assert.False(stopped.ProvenBest);
        Assert.True(stopped.Nodes <= 256);
    }

    [Fact]
    public void NearestToFeasible_InfeasibleLimits_ReportsWhatIsMissing()
    {
        // Two units of 10 at most, 25 wanted.
        ChanceProblem p = new()
        {
            Lower = [0],
            Upper = [2],
            Objectives =
            [
                [1],
            ],
            FreeSlopes = [],
            Nominal = [],
            LimitCoefficients = [-10],
            Limits = [-25],
        };
        NearestAnswer nearest = ChanceSearch.NearestToFeasible(p);
        Assert.Equal([2], nearest.Amounts);

        // 5 of 25 are missing.
        Assert.Equal(0.2, nearest.LimitViolations[0], 1e-6);
    }

    private static ChanceProblem Simple(double[]? nominal = null, double upper = 3) =>
        new()
        {
            Lower = [0, 0],
            Upper = [upper, 3],
            Objectives =
            [
                [1, 1],
            ],
            FreeSlopes = [0],
            Nominal = nominal ?? [1, 1],
        };

    /// <summary>Twelve variables whose rows nearly cancel in every scenario: not settled in a few hundred boxes.</summary>
    private static ChanceProblem Hard()
    {
        const int N = 12;
        const int S = 50;
        var random = new Random(5);
        double Noise() => random.NextDouble() - 0.5;
        double[] nominal =
        [
            .. Enumerable
                .Range(0, 2 * N)
                .Select(k => k < N ? 1 - (2 * (k % 2)) + 0.2 : (2 * (k % 2)) - 1 + 0.2),
        ];
        return new ChanceProblem
        {
            Lower = new double[N],
            Upper = [.. Enumerable.Repeat(10.0, N)],
            Objectives =
            [
                [.. Enumerable.Range(0, N).Select(i => 1 + (0.1234567 * i))],
            ],
            FreeSlopes = [0, 0],
            Nominal = nominal,
            ScenarioCount = S,
            Scenarios = [.. Enumerable.Range(0, 2 * N * S).Select(k => nominal[k / S] + Noise())],
            Chance = 0.9,
            LimitCoefficients = [.. Enumerable.Repeat(-1.0, N)],
            Limits = [-30],
        };
    }
}

using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// Every state of a heap that is reckoned with: a stage, a class of heat and up to three faults or growths. States that
/// are met less than once in millions are left out.
/// </summary>
internal sealed class HeapStates
{
    /// <summary>What holds in one state: stage, heat and three faults.</summary>
    public const int Places = 5;

    private const double RarestSet = 5e-6;
    private const double RarestState = 1e-8;
    private const double RareState = 5e-6;

    private readonly List<int> holding = [];
    private readonly List<double> chances = [];

    public HeapStates(SignModel model)
    {
        var stage = model.Field(SignModel.StageField);
        var heat = model.Field(SignModel.HeatField);
        int[] stages = [.. stage.Words.Select(model.Given)];
        int[] heats = [.. heat.Words.Select(w => model.Given("heat:" + w))];
        int[] faults =
        [
            .. model.Causes.Where(c => c.Group != CauseGroup.Stage).Select(c => model.Given(c.Id)),
        ];
        var stageChances = new double[stages.Length];
        var heatChances = new double[heats.Length];
        Span<int> now = stackalloc int[Places];
        var together = Together(model);
        foreach (var (a, b, c, independent) in Sets(model.Causes, faults))
        {
            var chance =
                independent * together[Count(model, a) + Count(model, b) + Count(model, c)];
            (now[0], now[1], now[2], now[3], now[4]) = (-1, -1, a, b, c);
            stage.Chances(now, stageChances);
            for (var s = 0; s < stages.Length; s++)
            {
                (now[0], now[1]) = (stages[s], -1);
                heat.Chances(now, heatChances);
                for (var h = 0; h < heats.Length; h++)
                {
                    var all = chance * stageChances[s] * heatChances[h];
                    if (all >= RarestState)
                    {
                        now[1] = heats[h];
                        holding.AddRange(now);
                        chances.Add(all);
                    }
                }
            }
        }

        var sum = chances.Sum();
        Chances = [.. chances.Select(p => p / sum)];
        Holding = [.. holding];
        int[] common = [.. Enumerable.Range(0, Chances.Length).Where(s => Chances[s] > RareState)];
        var met = common.Sum(s => Chances[s]);
        Common = (common, [.. common.Select(s => Chances[s] / met)]);
    }

    /// <summary>How often each state is met before anything is known; they add up to one.</summary>
    public ImmutableArray<double> Chances { get; }

    /// <summary>The states that are met often, nearly all of the weight, with their chances; they add up to one.</summary>
    public (int[] States, double[] Chances) Common { get; }

    /// <summary>What holds, <see cref="Places"/> for each state.</summary>
    public ImmutableArray<int> Holding { get; }

    /// <summary>What holds in a state.</summary>
    public ReadOnlySpan<int> Of(int state) => Holding.AsSpan(state * Places, Places);

    // Whoever asks has mostly one trouble: how much rarer or commoner none, one, two and three faults at once are than
    // faults that know nothing of each other would be.
    private static double[] Together(SignModel model)
    {
        double[] factors = [1, 1, 1, 1];
        if (model.TryField(SignModel.TogetherField) is { } field)
        {
            field.Chances([], factors.AsSpan(0, field.Words.Length));
        }

        return factors;
    }

    private static int Count(SignModel model, int fault) =>
        fault >= 0 && model.Causes[fault].Group == CauseGroup.Fault ? 1 : 0;

    private static IEnumerable<(int A, int B, int C, double Chance)> Sets(
        ImmutableArray<HeapCause> causes,
        int[] faults
    )
    {
        var none = 1.0;
        foreach (var fault in faults)
        {
            none *= 1 - causes[fault].Chance;
        }

        double Odds(int at) => causes[faults[at]].Chance / (1 - causes[faults[at]].Chance);
        yield return (-1, -1, -1, none);
        for (var a = 0; a < faults.Length; a++)
        {
            yield return (faults[a], -1, -1, none * Odds(a));
            for (var b = 0; b < a; b++)
            {
                yield return (faults[a], faults[b], -1, none * Odds(a) * Odds(b));
                for (var c = 0; c < b; c++)
                {
                    var chance = none * Odds(a) * Odds(b) * Odds(c);
                    if (chance >= RarestSet)
                    {
                        yield return (faults[a], faults[b], faults[c], chance);
                    }
                }
            }
        }
    }
}

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// Every state of a heap that is reckoned with: a stage, a class of heat and up to three faults or growths. States that
/// are met less than once in millions are left out.
/// </summary>
/// <remarks>
/// Bare arrays and loops throughout: a short command makes them anew, and what the framework would do with numbers by
/// queries is compiled at every start of the program.
/// </remarks>
internal sealed class HeapStates
{
    /// <summary>What holds in one state: stage, heat and three faults.</summary>
    public const int Places = 5;

    /// <summary>The most states there may be: <see cref="FactLikelihoods"/> numbers them in two bytes.</summary>
    public const int MostStates = 1 << 16;

    private const int UsualStates = 1 << 15;
    private const double RarestSet = 5e-6;
    private const double RarestState = 1e-8;
    private const double RareState = 5e-6;

    private readonly SignModel model;
    private readonly SignField stage;
    private readonly SignField heat;
    private readonly int[] stages;
    private readonly int[] heats;
    private readonly double[] stageChances;
    private readonly double[] heatChances;
    private readonly double[] together;

    private sbyte[] holding = new sbyte[UsualStates * Places];
    private double[] chances = new double[UsualStates];
    private readonly List<int> firsts = [];
    private int count;

    public HeapStates(SignModel model)
    {
        this.model = model;
        stage = model.Field(SignModel.StageField);
        heat = model.Field(SignModel.HeatField);
        stages = new int[stage.Words.Length];
        for (var s = 0; s < stages.Length; s++)
        {
            stages[s] = model.Given(stage.Words[s]);
        }

        heats = new int[heat.Words.Length];
        for (var h = 0; h < heats.Length; h++)
        {
            heats[h] = model.Given("heat:" + heat.Words[h]);
        }

        stageChances = new double[stages.Length];
        heatChances = new double[heats.Length];
        together = Together(model);
        AddSets();
        firsts.Add(count);
        Chances = Scaled();
        (CommonStates, CommonChances) = Common();
    }

    /// <summary>How often each state is met before anything is known; they add up to one.</summary>
    public double[] Chances { get; }

    /// <summary>The states that are met often, nearly all of the weight.</summary>
    public int[] CommonStates { get; }

    /// <summary>Their chances; they add up to one.</summary>
    public double[] CommonChances { get; }

    /// <summary>What holds in a state.</summary>
    public ReadOnlySpan<sbyte> Of(int state) => new(holding, state * Places, Places);

    /// <summary>How many sets of faults there are; the states of one follow each other.</summary>
    public int SetCount => firsts.Count - 1;

    /// <summary>The first state of a set of faults; of the number after the last set, the number of states.</summary>
    public int FirstOf(int set) => firsts[set];

    // None, one, two and three faults or growths; three of which all are rare are left out.
    private void AddSets()
    {
        var faults = new List<int>();
        var none = 1.0;
        for (var c = 0; c < model.Causes.Length; c++)
        {
            if (model.Causes[c].Group != CauseGroup.Stage)
            {
                faults.Add(c);
                none *= 1 - model.Causes[c].Chance;
            }
        }

        double Odds(int at) =>
            model.Causes[faults[at]].Chance / (1 - model.Causes[faults[at]].Chance);
        AddSet(-1, -1, -1, none);
        for (var a = 0; a < faults.Count; a++)
        {
            AddSet(faults[a], -1, -1, none * Odds(a));
            for (var b = 0; b < a; b++)
            {
                AddSet(faults[a], faults[b], -1, none * Odds(a) * Odds(b));
                for (var c = 0; c < b; c++)
                {
                    var chance = none * Odds(a) * Odds(b) * Odds(c);
                    if (chance >= RarestSet)
                    {
                        AddSet(faults[a], faults[b], faults[c], chance);
                    }
                }
            }
        }
    }

    // A set of faults in every stage and class of heat.
    private void AddSet(int a, int b, int c, double independent)
    {
        firsts.Add(count);
        var chance = independent * together[Count(a) + Count(b) + Count(c)];
        Span<sbyte> now = [-1, -1, (sbyte)a, (sbyte)b, (sbyte)c];
        stage.Chances(now, stageChances);
        for (var s = 0; s < stages.Length; s++)
        {
            (now[0], now[1]) = ((sbyte)stages[s], -1);
            heat.Chances(now, heatChances);
            for (var h = 0; h < heats.Length; h++)
            {
                var all = chance * stageChances[s] * heatChances[h];
                if (all >= RarestState)
                {
                    now[1] = (sbyte)heats[h];
                    Add(now, all);
                }
            }
        }
    }

    private void Add(ReadOnlySpan<sbyte> now, double chance)
    {
        if (count == MostStates)
        {
            throw new InvalidOperationException(
                "more than 65536 states of a heap: leave out rarer sets"
            );
        }

        if (count == chances.Length)
        {
            var (moreHolding, moreChances) = (
                new sbyte[MostStates * Places],
                new double[MostStates]
            );
            Array.Copy(holding, moreHolding, holding.Length);
            Array.Copy(chances, moreChances, count);
            (holding, chances) = (moreHolding, moreChances);
        }

        for (var place = 0; place < Places; place++)
        {
            holding[(count * Places) + place] = now[place];
        }

        chances[count++] = chance;
    }

    private double[] Scaled()
    {
        var sum = 0.0;
        for (var s = 0; s < count; s++)
        {
            sum += chances[s];
        }

        var scaled = new double[count];
        for (var s = 0; s < count; s++)
        {
            scaled[s] = chances[s] / sum;
        }

        return scaled;
    }

    private (int[] States, double[] Chances) Common()
    {
        var (often, met) = (0, 0.0);
        foreach (var chance in Chances)
        {
            often += chance > RareState ? 1 : 0;
            met += chance > RareState ? chance : 0;
        }

        var (states, shares) = (new int[often], new double[often]);
        var at = 0;
        for (var s = 0; s < count; s++)
        {
            if (Chances[s] > RareState)
            {
                (states[at], shares[at]) = (s, Chances[s] / met);
                at++;
            }
        }

        return (states, shares);
    }

    // Whoever asks has mostly one trouble: how much rarer or commoner none, one, two and three faults at once are than
    // faults that know nothing of each other would be.
    private static double[] Together(SignModel model)
    {
        double[] factors = [1, 1, 1, 1];
        if (model.TryField(SignModel.TogetherField) is { } field)
        {
            var told = new double[field.Words.Length];
            field.Chances([], told);
            told.CopyTo(factors, 0);
        }

        return factors;
    }

    private int Count(int fault) =>
        fault >= 0 && model.Causes[fault].Group == CauseGroup.Fault ? 1 : 0;
}

using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>
/// Everything of a heap that is not known, by member, each on a scale on which it is about standard normal: parameters,
/// what is in the heap, how warm it went in, and how the thermometer errs.
/// </summary>
internal sealed class Unknowns
{
    /// <summary>Standard deviation of the error of a thermometer that stays, K.</summary>
    public const double ProbeOffset = 1.5;

    /// <summary>Standard deviation of the depth at which a probe really stands, m.</summary>
    public const double DepthError = 0.05;

    // Beyond this many standard deviations nothing is moved.
    private const double Farthest = 3.5;

    // Amounts that were said to be exact were still measured by hand: standard deviations of the logarithm.
    private const double WaterError = 0.06;
    private const double DryError = 0.05;
    private const double FastError = 0.10;

    private const double StartErrorSaid = 1; // K
    private const double StartErrorAssumed = 2;

    private readonly SimulationQuestion question;
    private readonly HeapParameter[] parameters;
    private readonly MatterFeatures features;
    private readonly HeapMatter[] matter; // [member]: as the mixture gave it
    private readonly HeapMatter[][] additions; // [added event][member]

    private Unknowns(
        SimulationQuestion question,
        HeapParameter[] parameters,
        MatterFeatures features,
        HeapMatter[] matter,
        HeapMatter[][] additions,
        double[][] scores
    )
    {
        this.question = question;
        this.parameters = parameters;
        this.features = features;
        this.matter = matter;
        this.additions = additions;
        Scores = scores;
    }

    /// <summary>Shape [unknown][member]: parameters, features of the matter, the air if it is not known, then the single ones.</summary>
    public double[][] Scores { get; }

    /// <summary>The number of members.</summary>
    public int Count => matter.Length;

    /// <summary>Shape [member]: what the thermometer shows too much, K.</summary>
    public double[] Offset => Array.ConvertAll(Single(4), z => ProbeOffset * z);

    /// <summary>Shape [member]: how much deeper probes stand than noted, m.</summary>
    public double[] Deeper => Array.ConvertAll(Single(5), z => DepthError * z);

    /// <summary>The parameters that are not known exactly.</summary>
    public ReadOnlySpan<HeapParameter> Parameters => parameters;

    /// <summary>Draws members from what is known before any reading.</summary>
    /// <param name="question">The heap; its members are drawn.</param>
    /// <param name="members">The members of the plain prior.</param>
    /// <param name="knowledge">What earlier heaps taught.</param>
    public static Unknowns Draw(
        SimulationQuestion question,
        HeapMembers members,
        HeapKnowledge knowledge
    )
    {
        var n = members.Count;
        var uncertain = Enum.GetValues<HeapParameter>()
            .Where(p => !question.Parameters.Prior(p).IsExact)
            .ToArray();
        HeapMatter[] built = [.. members.Matter];
        var varying = MatterFeatures.Of(built);
        var scores = new List<double[]>();
        foreach (var parameter in uncertain)
        {
            var z = new double[n];
            question
                .Parameters.Prior(parameter)
                .ScoresOf(members.Draws[(int)parameter], HeapParameters.Scale, z);
            var known = knowledge.Of(parameter);
            scores.Add(
                Array.ConvertAll(
                    z,
                    s => known.Mean + (known.Deviation * Math.Clamp(s, -Farthest, Farthest))
                )
            );
        }

        scores.AddRange(varying.Scores(built));
        if (HeapMembers.AirScores(question) is { Length: > 0 } air)
        {
            scores.Add(air);
        }

        var points = HeapBuilder.PointsFor(n, question.Seed).Block("what the hand errs by");
        var u = new double[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)n)];
        for (var i = 0; i < Singles; i++)
        {
            points.Fill(i, u);
            scores.Add([.. u.Take(n).Select(NormalDistribution.Quantile)]);
        }

        return new Unknowns(question, uncertain, varying, built, members.Additions, [.. scores]);
    }

    private const int Singles = 6; // water, dry mass, fast share, start, offset, depth

    /// <summary>Some of the members, in the order given.</summary>
    /// <param name="members">Their numbers.</param>
    public Unknowns Take(int[] members) =>
        new(
            question,
            parameters,
            features,
            [.. members.Select(i => matter[i])],
            [.. additions.Select(a => members.Select(i => a[i]).ToArray())],
            [.. Scores.Select(row => members.Select(i => row[i]).ToArray())]
        );

    /// <summary>
    /// These members, drawn for a heap, in step with those fitted to another heap of the same hands, member by member:
    /// z = r z' + √(1 − r²) z₀.
    /// </summary>
    /// <param name="from">The fitted members of the other heap; as many.</param>
    /// <param name="inStep">r: 1 for the same heap under other circumstances.</param>
    public Unknowns InStepWith(Unknowns from, double inStep)
    {
        if (from.Count != Count)
        {
            throw new ArgumentException("as many members are needed", nameof(from));
        }

        var own = Math.Sqrt(1 - (inStep * inStep));
        var scores = Array.ConvertAll(Scores, row => (double[])row.Clone());
        void Follow(int row, int other)
        {
            for (var i = 0; i < Count && other >= 0; i++)
            {
                scores[row][i] = (inStep * from.Scores[other][i]) + (own * Scores[row][i]);
            }
        }

        for (var k = 0; k < parameters.Length; k++)
        {
            Follow(k, Array.IndexOf(from.parameters, parameters[k]));
        }

        List<int> theirs = [.. from.features.Varying];
        foreach (var (f, feature) in features.Varying.Index())
        {
            var at = theirs.IndexOf(feature);
            Follow(parameters.Length + f, at < 0 ? -1 : from.parameters.Length + at);
        }

        // The same weather for the same heap; another heap stands at another time.
        if (inStep >= 1 && HasAir && from.HasAir)
        {
            Follow(scores.Length - Singles - 1, from.Scores.Length - Singles - 1);
        }

        for (var s = 1; s <= Singles; s++)
        {
            Follow(scores.Length - s, from.Scores.Length - s);
        }

        return new Unknowns(question, parameters, features, matter, additions, scores);
    }

    /// <summary>Keeps everything within what can be.</summary>
    public void Confine()
    {
        foreach (var row in Scores)
        {
            for (var i = 0; i < row.Length; i++)
            {
                row[i] = Math.Clamp(row[i], -Farthest, Farthest);
            }
        }
    }

    /// <summary>The members as the simulation takes them.</summary>
    public HeapMembers ToMembers()
    {
        var draws = new double[HeapParameters.Count][];
        for (var p = 0; p < draws.Length; p++)
        {
            draws[p] = new double[Count];
            Array.Fill(draws[p], question.Parameters.Usual((HeapParameter)p));
        }

        for (var k = 0; k < parameters.Length; k++)
        {
            var parameter = parameters[k];
            var prior = question.Parameters.Prior(parameter);
            var values = draws[(int)parameter];
            for (var i = 0; i < Count; i++)
            {
                values[i] = prior.AtScore(Scores[k][i], HeapParameters.Scale);
                if (parameter == HeapParameter.StartActivity)
                {
                    values[i] = Math.Min(values[i], 1);
                }
            }
        }

        var weather = question.Weather;
        var airOffset = HasAir
            ? Array.ConvertAll(Scores[^(Singles + 1)], z => weather.AirError * z)
            : [];
        var start = question.StartCelsius ?? weather.StartAir;
        var startError = question.StartCelsius is null ? StartErrorAssumed : StartErrorSaid;
        return new HeapMembers(
            draws,
            [.. Enumerable.Range(0, Count).Select(Matter)],
            [
                .. Single(3)
                    .Select(
                        (z, i) =>
                            start
                            + (startError * z)
                            + (HasAir && question.StartCelsius is null ? airOffset[i] : 0)
                    ),
            ],
            additions,
            [.. airOffset]
        );
    }

    private HeapMatter Matter(int i)
    {
        var fitted = features.At(matter[i], Scores.AsSpan(parameters.Length), i);
        return MatterFeatures.Changed(
            fitted,
            Math.Exp(DryError * Single(1)[i]),
            Math.Exp(WaterError * Single(0)[i]),
            Math.Exp(FastError * Single(2)[i])
        );
    }

    // Whether one of the unknowns is by how much the air lies off the usual weather.
    private bool HasAir => Scores.Length > parameters.Length + features.Varying.Count + Singles;

    private double[] Single(int which) => Scores[^(Singles - which)];
}

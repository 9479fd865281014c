using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Simulation;

/// <summary>What the members of an ensemble differ in: parameters, matter, and how warm the matter went in.</summary>
internal sealed class HeapMembers
{
    /// <summary>Members by what they differ in.</summary>
    /// <param name="draws">Shape [parameter][member].</param>
    /// <param name="matter">Shape [member]: what the heap was built of.</param>
    /// <param name="startCelsius">Shape [member]: temperature of that matter when built, °C.</param>
    /// <param name="additions">Shape [added event, in order of time][member].</param>
    /// <param name="airOffset">Shape [member]: by how much the air lies above the weather, K; empty for none.</param>
    public HeapMembers(
        double[][] draws,
        ImmutableArray<HeapMatter> matter,
        ImmutableArray<double> startCelsius,
        HeapMatter[][] additions,
        ImmutableArray<double> airOffset
    )
    {
        Draws = draws;
        Matter = matter;
        StartCelsius = startCelsius;
        Additions = additions;
        AirOffset = airOffset;
    }

    /// <summary>Shape [parameter][member].</summary>
    public double[][] Draws { get; }

    /// <summary>Shape [member].</summary>
    public ImmutableArray<HeapMatter> Matter { get; }

    /// <summary>Shape [member]: °C.</summary>
    public ImmutableArray<double> StartCelsius { get; }

    /// <summary>Shape [added event][member].</summary>
    public HeapMatter[][] Additions { get; }

    /// <summary>Shape [member]: by how much the air lies above the weather, K; empty where all have the same.</summary>
    public ImmutableArray<double> AirOffset { get; }

    /// <summary>The number of members.</summary>
    public int Count => Matter.Length;

    /// <summary>The members of a question, nothing learned.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="mixture">Its mixture, in at least as many cases as there are members.</param>
    public static HeapMembers Of(SimulationQuestion question, Mixture mixture)
    {
        var n = question.Members;
        ImmutableArray<double> airOffset =
        [
            .. AirScores(question).Select(z => question.Weather.AirError * z),
        ];
        return new HeapMembers(
            HeapBuilder.Draw(question.Parameters, n, question.Seed),
            [.. Enumerable.Range(0, n).Select(m => MatterOf(mixture, m, n))],
            [
                .. Enumerable
                    .Range(0, n)
                    .Select(m =>
                        question.StartCelsius
                        ?? (question.Weather.StartAir + (airOffset.IsEmpty ? 0 : airOffset[m]))
                    ),
            ],
            [.. AdditionsOf(question).Select(a => Matters(a.Ingredients, question))],
            airOffset
        );
    }

    /// <summary>
    /// By how much the air of each member lies off the usual weather, in standard deviations; empty where the weather is
    /// taken as it is, or one member runs alone.
    /// </summary>
    /// <param name="question">The heap: its weather, members and seed.</param>
    public static double[] AirScores(SimulationQuestion question)
    {
        var n = question.Members;
        if (question.Weather.AirError <= 0 || n == 1)
        {
            return [];
        }

        var u = new double[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)n)];
        HeapBuilder.PointsFor(n, question.Seed).Block("air from year to year").Fill(0, u);
        return [.. u.Take(n).Select(NormalDistribution.Quantile)];
    }

    /// <summary>What is added in the time that is followed, in order of time.</summary>
    /// <param name="question">The heap.</param>
    public static IEnumerable<Added> AdditionsOf(SimulationQuestion question) =>
        question.Events.OfType<Added>().Where(e => e.Day <= question.Days).OrderBy(e => e.Day);

    /// <summary>The matter of something added, in every member.</summary>
    /// <param name="ingredients">What.</param>
    /// <param name="question">The heap: its members and seed.</param>
    public static HeapMatter[] Matters(
        ImmutableArray<Ingredient> ingredients,
        SimulationQuestion question
    )
    {
        var mixture = HeapBuilder.MixtureFor(
            new MixtureQuestion { Ingredients = ingredients },
            question.Members,
            question.Seed
        );
        var matter = new HeapMatter[question.Members];
        for (var m = 0; m < matter.Length; m++)
        {
            matter[m] = MatterOf(mixture, m, matter.Length);
        }

        return matter;
    }

    // One member alone runs everything at its typical value.
    private static HeapMatter MatterOf(Mixture from, int member, int members) =>
        HeapMatter.Of(from, members == 1 ? -1 : member);
}

using System.Collections.Immutable;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>What the members of an ensemble differ in: parameters, matter, and how warm the matter went in.</summary>
internal sealed class HeapMembers
{
    /// <summary>Members by what they differ in.</summary>
    /// <param name="draws">Shape [parameter][member].</param>
    /// <param name="matter">Shape [member]: what the heap was built of.</param>
    /// <param name="startCelsius">Shape [member]: temperature of that matter when built, °C.</param>
    /// <param name="additions">Shape [added event, in order of time][member].</param>
    public HeapMembers(
        double[][] draws,
        ImmutableArray<HeapMatter> matter,
        ImmutableArray<double> startCelsius,
        HeapMatter[][] additions
    )
    {
        Draws = draws;
        Matter = matter;
        StartCelsius = startCelsius;
        Additions = additions;
    }

    /// <summary>Shape [parameter][member].</summary>
    public double[][] Draws { get; }

    /// <summary>Shape [member].</summary>
    public ImmutableArray<HeapMatter> Matter { get; }

    /// <summary>Shape [member]: °C.</summary>
    public ImmutableArray<double> StartCelsius { get; }

    /// <summary>Shape [added event][member].</summary>
    public HeapMatter[][] Additions { get; }

    /// <summary>The number of members.</summary>
    public int Count => Matter.Length;

    /// <summary>The members of a question, nothing learned.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="mixture">Its mixture, in at least as many cases as there are members.</param>
    public static HeapMembers Of(SimulationQuestion question, Mixture mixture)
    {
        var n = question.Members;
        return new HeapMembers(
            HeapBuilder.Draw(question.Parameters, n, question.Seed),
            [.. Enumerable.Range(0, n).Select(m => MatterOf(mixture, m, n))],
            [.. Enumerable.Repeat(question.StartCelsius ?? question.Weather.MeanAir, n)],
            [.. AdditionsOf(question).Select(a => Matters(a.Ingredients, question))]
        );
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

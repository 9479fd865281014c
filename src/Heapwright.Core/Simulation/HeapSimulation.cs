using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>Simulates a heap: the entry to everything in this folder.</summary>
public static class HeapSimulation
{
    /// <summary>Runs a heap with all its members.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The same bits for the same question and kind of processor, whatever the number of threads.</returns>
    /// <exception cref="ArgumentException">The volume of the mixture is not known, or nothing is in it.</exception>
    public static SimulationAnswer Run(
        SimulationQuestion question,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        return Run(
            question,
            HeapBuilder.MixtureFor(question.Mixture, question.Members, question.Seed),
            cancellation
        );
    }

    /// <summary>Runs a heap whose mixture has been worked out, in at least as many cases as there are members.</summary>
    internal static SimulationAnswer Run(
        SimulationQuestion question,
        Mixture mixture,
        CancellationToken cancellation
    )
    {
        return EnsembleRun
            .From(
                question,
                HeapMatter.Of(mixture, -1),
                HeapMembers.Of(question, mixture),
                cancellation
            )
            .Answer();
    }

    /// <summary>The volume that a mixture takes when built, everything typical and nothing pressed to fit, m³.</summary>
    /// <param name="mixture">The mixture; its volume known.</param>
    /// <param name="parameters">The parameters.</param>
    public static double LooseBuiltVolume(Mixture mixture, HeapParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        return HeapBuilder.Untrodden(
            HeapMatter.Of(mixture, -1),
            parameters.Usual(HeapParameter.BuiltVolume)
        );
    }
}

using System.Runtime.Intrinsics;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>Simulates a heap: the entry to everything in this folder.</summary>
public static class HeapSimulation
{
    // kg C per kg of the three pools, before they are brought to the carbon of the mixture: carbohydrate and lignin.
    private const double CarbohydrateCarbon = 0.45;
    private const double LigninCarbon = 0.55;

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
        var members = question.Members;
        var one = members == 1;
        var additions = question
            .Events.OfType<Added>()
            .Where(e => e.Day <= question.Days)
            .OrderBy(e => e.Day)
            .Select(e =>
                HeapBuilder.MixtureFor(
                    new MixtureQuestion { Ingredients = e.Ingredients },
                    members,
                    question.Seed
                )
            )
            .ToArray();
        var typical = HeapMatter.Of(mixture, -1);
        if (!(typical.Filled > 0))
        {
            throw new ArgumentException("the volume of the mixture is not known", nameof(question));
        }

        var (volume, trodden) = HeapBuilder.BuiltVolume(
            typical,
            question.Bin,
            question.Parameters.Usual(HeapParameter.BuiltVolume)
        );
        var grid = HeapGrid.Of(question.Bin, volume, question.Refinement);
        var draws = HeapBuilder.Draw(question.Parameters, members, question.Seed);
        var runs = new BlockRun[(members + HeapBlock.Lanes - 1) / HeapBlock.Lanes];
        Parallel.For(
            0,
            runs.Length,
            new ParallelOptions { CancellationToken = cancellation },
            b =>
            {
                var block = new HeapBlock(grid, question.Weather)
                {
                    Wall = question.Walls,
                    Cover = question.Cover,
                };
                var extra = new HeapMatter[additions.Length][];
                for (var a = 0; a < extra.Length; a++)
                {
                    extra[a] = new HeapMatter[HeapBlock.Lanes];
                }

                for (var lane = 0; lane < HeapBlock.Lanes; lane++)
                {
                    // A block that is not full repeats its last member.
                    var member = Math.Min((b * HeapBlock.Lanes) + lane, members - 1);
                    for (var p = 0; p < HeapParameters.Count; p++)
                    {
                        block.ParameterOf((HeapParameter)p, lane) = draws[p][member];
                    }

                    var matter = HeapMatter.Of(mixture, one ? -1 : member);
                    for (var a = 0; a < extra.Length; a++)
                    {
                        extra[a][lane] = HeapMatter.Of(additions[a], one ? -1 : member);
                    }

                    SetCarbon(block, lane, matter);
                    var (built, _) = HeapBuilder.BuiltVolume(
                        matter,
                        question.Bin,
                        draws[(int)HeapParameter.BuiltVolume][member]
                    );
                    HeapBuilder.Fill(
                        block,
                        grid,
                        lane,
                        matter,
                        built,
                        question.StartCelsius ?? question.Weather.MeanAir
                    );
                }

                runs[b] = new BlockRun(question, grid, block, extra);
                runs[b].ToEnd(cancellation);
            }
        );
        return AnswerWriter.Write(question, grid, runs, volume, trodden);
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

    internal static void SetCarbon(HeapBlock block, int lane, HeapMatter matter)
    {
        var b = matter.Balance;
        var lignin = Math.Max(0, b.DryMass - b.Ash - b.FastMatter - b.SlowMatter);
        var plain = (CarbohydrateCarbon * (b.FastMatter + b.SlowMatter)) + (LigninCarbon * lignin);
        var scale = plain > 0 ? b.Carbon / plain : 1;
        for (var pool = 0; pool < 3; pool++)
        {
            block.CarbonShare[pool] = block
                .CarbonShare[pool]
                .WithElement(lane, scale * (pool == 2 ? LigninCarbon : CarbohydrateCarbon));
        }
    }
}

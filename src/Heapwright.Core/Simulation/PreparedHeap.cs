using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>A heap ready to be run: its grid, and its members in blocks, filled on demand.</summary>
internal sealed class PreparedHeap
{
    private readonly SimulationQuestion question;
    private readonly Mixture mixture;
    private readonly double[][] draws; // [parameter][member]

    /// <summary>Prepares a heap.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="mixture">Its mixture, in at least as many cases as there are members.</param>
    /// <exception cref="ArgumentException">The volume of the mixture is not known.</exception>
    public PreparedHeap(SimulationQuestion question, Mixture mixture)
    {
        this.question = question;
        this.mixture = mixture;
        var typical = HeapMatter.Of(mixture, -1);
        if (!(typical.Filled > 0))
        {
            throw new ArgumentException("the volume of the mixture is not known", nameof(question));
        }

        (Volume, Trodden) = HeapBuilder.BuiltVolume(
            typical,
            question.Bin,
            question.Parameters.Usual(HeapParameter.BuiltVolume)
        );
        Grid = HeapGrid.Of(question.Bin, Volume, question.Refinement);
        draws = HeapBuilder.Draw(question.Parameters, question.Members, question.Seed);
    }

    /// <summary>The zones.</summary>
    public HeapGrid Grid { get; }

    /// <summary>Built volume, m³, typical.</summary>
    public double Volume { get; }

    /// <summary>By how much the matter had to be trodden in to fit; 1 where it was not.</summary>
    public double Trodden { get; }

    /// <summary>The number of blocks.</summary>
    public int Blocks => (question.Members + HeapBlock.Lanes - 1) / HeapBlock.Lanes;

    /// <summary>A block, filled as built; any thread may ask for any block.</summary>
    /// <param name="number">Its number, from 0.</param>
    public HeapBlock Block(int number)
    {
        var block = new HeapBlock(Grid, question.Weather)
        {
            Wall = question.Walls,
            Cover = question.Cover,
        };
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            var member = Member(number, lane);
            for (var p = 0; p < HeapParameters.Count; p++)
            {
                block.ParameterOf((HeapParameter)p, lane) = draws[p][member];
            }

            var matter = MatterOf(mixture, member);
            HeapBuilder.SetCarbon(block, lane, matter);
            var (built, _) = HeapBuilder.BuiltVolume(
                matter,
                question.Bin,
                draws[(int)HeapParameter.BuiltVolume][member]
            );
            HeapBuilder.Fill(
                block,
                Grid,
                lane,
                matter,
                built,
                question.StartCelsius ?? question.Weather.MeanAir
            );
        }

        return block;
    }

    /// <summary>The matter of a mixture in every lane of a block.</summary>
    /// <param name="added">The mixture.</param>
    /// <param name="number">The number of the block, from 0.</param>
    public HeapMatter[] Matter(Mixture added, int number)
    {
        var matter = new HeapMatter[HeapBlock.Lanes];
        for (var lane = 0; lane < matter.Length; lane++)
        {
            matter[lane] = MatterOf(added, Member(number, lane));
        }

        return matter;
    }

    // A block that is not full repeats the last member.
    private int Member(int block, int lane) =>
        Math.Min((block * HeapBlock.Lanes) + lane, question.Members - 1);

    // One member alone runs everything at its typical value.
    private HeapMatter MatterOf(Mixture from, int member) =>
        HeapMatter.Of(from, question.Members == 1 ? -1 : member);
}

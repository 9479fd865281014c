using System.Runtime.Intrinsics;
using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>A heap ready to be run: its grid, and its members in blocks, filled on demand.</summary>
internal sealed class PreparedHeap
{
    private readonly SimulationQuestion question;
    private readonly HeapMembers members;

    /// <summary>Prepares a heap with nothing learned of it.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="mixture">Its mixture, in at least as many cases as there are members.</param>
    /// <exception cref="ArgumentException">The volume of the mixture is not known.</exception>
    public PreparedHeap(SimulationQuestion question, Mixture mixture)
        : this(question, HeapMatter.Of(mixture, -1), HeapMembers.Of(question, mixture)) { }

    /// <summary>Prepares a heap with given members.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="typical">Its matter, everything typical: it sets the size of the zones.</param>
    /// <param name="members">The members.</param>
    /// <exception cref="ArgumentException">The volume of the matter is not known.</exception>
    public PreparedHeap(SimulationQuestion question, HeapMatter typical, HeapMembers members)
    {
        this.question = question;
        this.members = members;
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
    }

    /// <summary>The zones.</summary>
    public HeapGrid Grid { get; }

    /// <summary>Built volume, m³, typical.</summary>
    public double Volume { get; }

    /// <summary>By how much the matter had to be trodden in to fit; 1 where it was not.</summary>
    public double Trodden { get; }

    /// <summary>The number of blocks.</summary>
    public int Blocks => (members.Count + HeapBlock.Lanes - 1) / HeapBlock.Lanes;

    /// <summary>A block, filled as built; any thread may ask for any block.</summary>
    /// <param name="number">Its number, from 0.</param>
    public HeapBlock Block(int number)
    {
        var block = new HeapBlock(Grid, question.Weather)
        {
            Wall = question.Walls,
            Cover = question.Cover,
            AirOffset = AirOffset(number),
        };
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            var member = Member(number, lane);
            for (var p = 0; p < HeapParameters.Count; p++)
            {
                block.ParameterOf((HeapParameter)p, lane) = members.Draws[p][member];
            }

            var matter = members.Matter[member];
            HeapBuilder.SetCarbon(block, lane, matter);
            var (built, _) = HeapBuilder.BuiltVolume(
                matter,
                question.Bin,
                members.Draws[(int)HeapParameter.BuiltVolume][member]
            );
            HeapBuilder.Fill(block, Grid, lane, matter, built, members.StartCelsius[member]);
        }

        return block;
    }

    /// <summary>A run of a block from the day it was built.</summary>
    /// <param name="number">The number of the block, from 0.</param>
    public BlockRun Run(int number) =>
        new(question, Grid, Block(number), [.. members.Additions.Select(a => Lanes(a, number))]);

    /// <summary>What is true of members, in the lanes of a block.</summary>
    /// <param name="byMember">Shape [member].</param>
    /// <param name="number">The number of the block, from 0.</param>
    public HeapMatter[] Lanes(HeapMatter[] byMember, int number)
    {
        var lanes = new HeapMatter[HeapBlock.Lanes];
        for (var lane = 0; lane < lanes.Length; lane++)
        {
            lanes[lane] = byMember[Member(number, lane)];
        }

        return lanes;
    }

    private Vector512<double> AirOffset(int number)
    {
        var offset = Vector512<double>.Zero;
        for (var lane = 0; lane < HeapBlock.Lanes && !members.AirOffset.IsEmpty; lane++)
        {
            offset = offset.WithElement(lane, members.AirOffset[Member(number, lane)]);
        }

        return offset;
    }

    // A block that is not full repeats the last member.
    private int Member(int block, int lane) =>
        Math.Min((block * HeapBlock.Lanes) + lane, members.Count - 1);
}

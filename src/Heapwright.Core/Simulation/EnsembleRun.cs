namespace Heapwright.Core.Simulation;

/// <summary>All blocks of a heap on their way: run to a day, looked at, and branched into what might be done next.</summary>
internal sealed class EnsembleRun
{
    private readonly PreparedHeap heap;

    private EnsembleRun(
        SimulationQuestion question,
        PreparedHeap heap,
        HeapMembers members,
        BlockRun[] blocks
    )
    {
        Question = question;
        this.heap = heap;
        Members = members;
        Blocks = blocks;
    }

    /// <summary>The heap, and to which day it was run.</summary>
    public SimulationQuestion Question { get; }

    /// <summary>The members.</summary>
    public HeapMembers Members { get; }

    /// <summary>Shape [block].</summary>
    public BlockRun[] Blocks { get; }

    /// <summary>The zones.</summary>
    public HeapGrid Grid => heap.Grid;

    /// <summary>Runs a heap from the day it was built.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="typical">Its matter, everything typical.</param>
    /// <param name="members">The members.</param>
    /// <param name="cancellation">Gives up.</param>
    public static EnsembleRun From(
        SimulationQuestion question,
        HeapMatter typical,
        HeapMembers members,
        CancellationToken cancellation
    )
    {
        var prepared = new PreparedHeap(question, typical, members);
        var blocks = new BlockRun[prepared.Blocks];
        Each(blocks, prepared.Run, cancellation);
        return new EnsembleRun(question, prepared, members, blocks);
    }

    /// <summary>Goes on from where this run stands, in all of its members or those of some blocks.</summary>
    /// <param name="question">What is done from here on, and to which day.</param>
    /// <param name="additions">Shape [added event][member of this run].</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="blocks">The blocks that go on, in that order; null for all.</param>
    public EnsembleRun Branch(
        SimulationQuestion question,
        HeapMatter[][] additions,
        CancellationToken cancellation,
        int[]? blocks = null
    )
    {
        blocks ??= [.. Enumerable.Range(0, Blocks.Length)];
        var branches = new BlockRun[blocks.Length];
        Each(
            branches,
            k =>
                Blocks[blocks[k]]
                    .Branch(question, [.. additions.Select(a => heap.Lanes(a, blocks[k]))]),
            cancellation
        );
        return new EnsembleRun(
            question with
            {
                Members =
                    blocks.Length == Blocks.Length
                        ? Question.Members
                        : blocks.Length * HeapBlock.Lanes,
            },
            heap,
            Members,
            branches
        );
    }

    /// <summary>Everything that was seen, by member.</summary>
    public SimulationAnswer Answer() =>
        AnswerWriter.Write(Question, Grid, Blocks, heap.Volume, heap.Trodden);

    private static void Each(
        BlockRun[] blocks,
        Func<int, BlockRun> start,
        CancellationToken cancellation
    ) =>
        Parallel.For(
            0,
            blocks.Length,
            new ParallelOptions { CancellationToken = cancellation },
            b =>
            {
                blocks[b] = start(b);
                blocks[b].ToEnd(cancellation);
            }
        );
}

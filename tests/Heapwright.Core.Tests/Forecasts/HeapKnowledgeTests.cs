using Heapwright.Core.Forecasts;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Tests.Forecasts;

public class HeapKnowledgeTests
{
    [Fact]
    public void From_NoHeaps_KeepsThePrior()
    {
        var known = HeapKnowledge.From([]);

        Assert.True(known.IsEmpty);
        Assert.Equal(new ParameterScore(0, 1), known.Of(HeapParameter.FastRate));
    }

    // One heap that found z = 0.8 ± 0.6: alone it said variance 1/(1/0.36 − 1) = 0.5625 about 1.25; of the person's own
    // mean (variance 0.5 before) it is a measurement of variance 1.0625: mean 1.25/1.0625 / (1/1.0625 + 2) = 0.4,
    // variance 1/(1/1.0625 + 2) = 0.34, and 0.5 between heaps. Worked by hand.
    [Fact]
    public void From_OneHeap_MovesPartOfTheWay()
    {
        var known = HeapKnowledge.From([Heap(0.8, 0.6)]).Of(HeapParameter.FastRate);

        Assert.Equal(0.4, known.Mean, 1e-9);
        Assert.Equal(Math.Sqrt(0.84), known.Deviation, 1e-9);
    }

    [Fact]
    public void From_ManyCertainHeaps_StopsAtTheFloor()
    {
        var known = HeapKnowledge
            .From(Enumerable.Repeat(Heap(1, 0.05), 500))
            .Of(HeapParameter.FastRate);

        Assert.Equal(1, known.Mean, 0.01);
        Assert.InRange(known.Deviation, HeapKnowledge.Floor, HeapKnowledge.Floor + 0.001);
        Assert.Equal(Math.Sqrt(0.5), HeapKnowledge.Floor, 1e-12);
    }

    [Fact]
    public void From_HeapThatLearnedNothing_IsPassedOver() =>
        Assert.True(HeapKnowledge.From([Heap(0.2, 1)]).IsEmpty);

    private static Dictionary<HeapParameter, ParameterScore> Heap(double mean, double deviation) =>
        new() { [HeapParameter.FastRate] = new ParameterScore(mean, deviation) };
}

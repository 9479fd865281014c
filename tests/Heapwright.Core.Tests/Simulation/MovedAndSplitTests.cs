using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>A heap that is moved into another bay, and one of which part is taken away.</summary>
public class MovedAndSplitTests
{
    private static readonly SimulationQuestion Still = SameBitsTests.Question() with
    {
        Days = 14,
        Members = 8,
        Events = [],
    };

    [Fact]
    public void Split_Half_LeavesHalfOfWhatIsThereAndTheSameLosses()
    {
        var whole = Run(Still with { Days = 6 });
        var split = Run(Still with { Days = 6, Events = [new Split(6, 0.5)] });

        for (var i = 0; i < whole.Books.Length; i++)
        {
            // All that is counted in kilograms is halved; what is counted in shares is what it was.
            Assert.Equal(0.5 * whole.CarbonIn[i], split.CarbonIn[i], 1e-9 * whole.CarbonIn[i]);
            Assert.Equal(0.5 * whole.WaterIn[i], split.WaterIn[i], 1e-9 * whole.WaterIn[i]);
            Assert.Equal(
                whole.Milestones[i].DryLossPercent,
                split.Milestones[i].DryLossPercent,
                1e-9
            );
            Assert.Equal(
                whole.Milestones[i].NitrogenLossPercent,
                split.Milestones[i].NitrogenLossPercent,
                1e-9
            );
            Assert.Equal(whole.Core[^1][i], split.Core[^1][i], 1e-9);
            Assert.Equal(whole.Moisture[^1][i], split.Moisture[^1][i], 1e-9);
            // Under less weight it lies a little looser, so that it is a little higher than half.
            Assert.InRange(split.Height[^1][i] / whole.Height[^1][i], 0.5, 0.6);
            Assert.InRange(
                split.Milestones[i].FinalVolumePercent / whole.Milestones[i].FinalVolumePercent,
                0.5,
                0.6
            );
        }
    }

    [Fact]
    public void Split_WhileHot_CoolsSoonerThanLeftWhole()
    {
        var whole = Run(Still);
        var split = Run(Still with { Events = [new Split(5, 0.7)] });

        Assert.All(
            whole.Core[^1].Zip(split.Core[^1]),
            pair => Assert.True(pair.Second < pair.First - 3, $"{pair.First} and {pair.Second}")
        );
        Balanced(split);
    }

    [Fact]
    public void Move_IntoABayOfTheSameSize_IsATurn()
    {
        var turned = Run(Still with { Events = [new Turned(5, 0.95, TurnedPart.All)] });
        var moved = Run(Still with { Events = [new Moved(5, 0.95, Still.Bin, Still.Walls)] });
        var kept = Run(Still with { Events = [new Moved(5, 0.95, null, null)] });

        Assert.Equal(turned.Core, moved.Core);
        Assert.Equal(turned.Core, kept.Core);
    }

    [Fact]
    public void Move_IntoAWiderBay_LiesLowerAndCoolsSooner()
    {
        var wide = Bin.Box(Length.FromMeters(2), Length.FromMeters(1), Length.FromMeters(1));
        var same = Run(Still with { Events = [new Moved(5, 0.95, null, null)] });
        var moved = Run(Still with { Events = [new Moved(5, 0.95, wide, null)] });

        for (var i = 0; i < same.Books.Length; i++)
        {
            Assert.InRange(moved.Height[^1][i] / same.Height[^1][i], 0.5, 0.6);
            Assert.InRange(
                moved.Milestones[i].FinalVolumePercent / same.Milestones[i].FinalVolumePercent,
                1,
                1.2
            );
            Assert.True(moved.Core[^1][i] < same.Core[^1][i]);
        }

        Balanced(moved);
    }

    [Fact]
    public void Move_IntoABayWhereItLiesShallow_KeepsItsLayers()
    {
        var floor = Bin.Box(Length.FromMeters(3), Length.FromMeters(2), Length.FromMeters(1));

        Balanced(Run(Still with { Events = [new Moved(5, 0.95, floor, null)] }));
    }

    [Theory]
    [InlineData(0.05, 2)]
    [InlineData(0.2, 3)]
    [InlineData(0.3, 4)]
    [InlineData(1, 4)]
    public void Grid_OfAShallowHeap_HasNoThinLayers(double metres, int layers)
    {
        var bin = Bin.Box(Length.FromMeters(1), Length.FromMeters(1), Length.FromMeters(1));

        var grid = HeapGrid.Of(bin, metres);

        Assert.Equal(layers, grid.Layers);
        Assert.Equal(metres, grid.Volume, 1e-12);
        Assert.Equal(1, Regions.Core(grid).Sum(z => z.Weight), 1e-9);
        Assert.Equal(1, Regions.Outer(grid).Sum(z => z.Weight), 1e-9);
    }

    [Fact]
    public void Move_OntoOpenGround_KeepsItsOutline()
    {
        var cone = Bin.Cone(Length.FromMeters(2), Length.FromMeters(1));

        Assert.Equal(
            Run(Still with { Events = [new Moved(5, 0.95, null, null)] }).Core,
            Run(Still with { Events = [new Moved(5, 0.95, cone, null)] }).Core
        );
    }

    private static SimulationAnswer Run(SimulationQuestion question) =>
        HeapSimulation.Run(question, TestContext.Current.CancellationToken);

    private static void Balanced(SimulationAnswer answer)
    {
        for (var i = 0; i < answer.Books.Length; i++)
        {
            Assert.InRange(Math.Abs(answer.Books[i].WaterError), 0, 1e-6 * answer.WaterIn[i]);
            Assert.InRange(Math.Abs(answer.Books[i].CarbonError), 0, 1e-6 * answer.CarbonIn[i]);
            Assert.InRange(Math.Abs(answer.Books[i].NitrogenError), 0, 1e-6 * answer.NitrogenIn[i]);
            Assert.InRange(Math.Abs(answer.Books[i].EnergyErrorPercent), 0, 0.1);
        }
    }
}

using Heapwright.Core.Simulation;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>A run that is stopped, branched and carried on is the run that was never stopped.</summary>
public class BranchTests
{
    [Fact]
    public void Branch_SameFuture_IsTheSameHeap()
    {
        var question = SameBitsTests.Question() with
        {
            Members = 16,
            Days = 9,
            Events = [new Watered(2, 10), new Turned(5.5, 0.8, TurnedPart.All), new Watered(6, 5)],
        };
        var whole = HeapSimulation.Run(question, TestContext.Current.CancellationToken);

        var mixture = HeapBuilder.MixtureFor(question.Mixture, question.Members, question.Seed);
        var stopped = EnsembleRun.From(
            question with
            {
                Days = 4,
            },
            HeapMatter.Of(mixture, -1),
            HeapMembers.Of(question, mixture),
            TestContext.Current.CancellationToken
        );
        var future = question with { Events = [.. question.Events.Skip(1)] };
        var carried = stopped.Branch(future, [], TestContext.Current.CancellationToken).Answer();
        // What the first branch does to its heap must not show in the second.
        var again = stopped.Branch(future, [], TestContext.Current.CancellationToken).Answer();

        Assert.Equal(whole.Days, carried.Days);
        // Not the same bits, for the step starts anew where it was stopped; within the tolerance of a step.
        for (var t = 0; t < whole.Days.Length; t++)
        {
            for (var i = 0; i < question.Members; i++)
            {
                Assert.Equal(whole.Core[t][i], carried.Core[t][i], 0.1);
                Assert.Equal(carried.Core[t][i], again.Core[t][i]);
            }
        }

        for (var i = 0; i < question.Members; i++)
        {
            Assert.Equal(
                whole.Milestones[i].ShareHeldPercent,
                carried.Milestones[i].ShareHeldPercent,
                1.0
            );
            Assert.Equal(
                carried.Milestones[i].ShareHeldPercent,
                again.Milestones[i].ShareHeldPercent
            );
            Assert.InRange(Math.Abs(carried.Books[i].WaterError), 0, 1e-6);
            Assert.InRange(Math.Abs(carried.Books[i].EnergyErrorPercent), 0, 0.1);
        }
    }

    [Fact]
    public void Branch_SomeBlocks_AreThoseMembers()
    {
        var question = SameBitsTests.Question() with { Members = 32, Days = 3, Events = [] };
        var mixture = HeapBuilder.MixtureFor(question.Mixture, question.Members, question.Seed);
        var run = EnsembleRun.From(
            question,
            HeapMatter.Of(mixture, -1),
            HeapMembers.Of(question, mixture),
            TestContext.Current.CancellationToken
        );
        var longer = question with { Days = 5 };

        var all = run.Branch(longer, [], TestContext.Current.CancellationToken).Answer();
        var some = run.Branch(longer, [], TestContext.Current.CancellationToken, [1, 3]).Answer();

        Assert.Equal(16, some.Question.Members);
        Assert.Equal(all.Core[^1][8..16], some.Core[^1][..8]);
        Assert.Equal(all.Core[^1][24..], some.Core[^1][8..]);
    }
}

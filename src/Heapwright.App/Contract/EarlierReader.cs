using Heapwright.Core.Forecasts;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Contract;

/// <summary>Reads <c>earlier</c>: what earlier heaps of the same person in the same bay taught, the same in every question.</summary>
internal static class EarlierReader
{
    /// <summary>The name of the field.</summary>
    public const string Field = "earlier";

    private const int Most = 50;

    /// <summary>What earlier heaps taught; says so among the assumptions where there is any.</summary>
    /// <param name="list">The field; null where it is not there.</param>
    /// <param name="assumptions">Takes the sentence.</param>
    /// <exception cref="InputProblem">The list is wrong.</exception>
    public static HeapKnowledge Read(Input? list, Assumptions assumptions)
    {
        if (list is null)
        {
            return HeapKnowledge.None;
        }

        var heaps = new List<Dictionary<HeapParameter, ParameterScore>>();
        foreach (var heap in list.Items(0, Most))
        {
            var learned = new Dictionary<HeapParameter, ParameterScore>();
            var known = heap.Fields(ParameterNames.All);
            foreach (var name in ParameterNames.All)
            {
                if (known[name] is not { } value)
                {
                    continue;
                }

                var fields = value.Fields("mean", "deviation");
                learned[ParameterNames.Find(name)!.Value] = new ParameterScore(
                    fields.Needed("mean").Number(-10, 10),
                    fields.Needed("deviation").Number(0.01, 10)
                );
            }

            heaps.Add(learned);
        }

        var knowledge = HeapKnowledge.From(heaps);
        if (!knowledge.IsEmpty)
        {
            assumptions.Say(
                heaps.Count == 1 ? "lessons.used_one" : "lessons.used",
                heaps.Count,
                100 * HeapKnowledge.Floor
            );
        }

        return knowledge;
    }
}

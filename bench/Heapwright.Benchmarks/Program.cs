using System.Globalization;
using Heapwright.Benchmarks.Heaps;
using Heapwright.Benchmarks.RecipeSearch;

if (args is ["heap-export", var exported, var count, var cut])
{
    HeapMembers.Export(exported, Whole(count), Whole(cut));
    return;
}

if (args is ["heap-convergence"])
{
    HeapConvergence.Print();
    return;
}

if (args is ["heap-time", var timed, var howMany, var howFine, var tolerance])
{
    HeapMembers.Time(timed, Whole(howMany), Whole(howFine), Number(tolerance));
    return;
}

string name = args.Length > 0 ? args[0] : "SCIP";
int from = int.Parse(args[1], CultureInfo.InvariantCulture);
int to = int.Parse(args[2], CultureInfo.InvariantCulture);
int obj = int.Parse(args[3], CultureInfo.InvariantCulture);
for (int seed = from; seed < to; seed++)
{
    var p = RecipeInstances.Make(seed);
    var o = PeerMip.Solve(name, p, obj, 60);
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"{seed} {name} {o.Status} [{string.Join(' ', o.Objectives)}] {o.Milliseconds:F0} ms  x=[{string.Join(' ', o.Amounts)}]"
        )
    );
}

static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

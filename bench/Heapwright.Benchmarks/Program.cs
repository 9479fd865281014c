using System.Globalization;
using Heapwright.Benchmarks.RecipeSearch;

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

using System.Diagnostics;
using System.Globalization;
using Heapwright.Benchmarks.RecipeSearch;
using Heapwright.Numerics.Search;

double spread = double.Parse(args[0], CultureInfo.InvariantCulture);
int to = int.Parse(args[1], CultureInfo.InvariantCulture);
for (int seed = 1; seed <= to; seed++)
{
    var p = GardenInstances.Make(seed, spread);
    var clock = Stopwatch.StartNew();
    var a = ChanceSearch.Solve(p, SearchBudget.Default with { Nodes = 100000 });
    var ms = clock.Elapsed.TotalMilliseconds;
    string peer = "";
    if (args.Length > 2)
    {
        var o = PeerMip.Solve(args[2], p, 1, 20);
        peer = $"{o.Status} [{string.Join(' ', o.Objectives)}] {o.Milliseconds:F0}";
    }
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"{seed} {a.Status} {string.Join(' ', a.Objectives)} {a.Share} nodes {a.Nodes} {ms:F1} {peer}"
        )
    );
}

using System.Globalization;
using Heapwright.Benchmarks.Forecasts;
using Heapwright.Benchmarks.Heaps;
using Heapwright.Benchmarks.Mixing;
using Heapwright.Benchmarks.RecipeSearch;

string Option(string name, string usual)
{
    int at = Array.IndexOf(args, name);
    return at >= 0 && at + 1 < args.Length ? args[at + 1] : usual;
}

switch (args.FirstOrDefault())
{
    case "recipe-search":
        return RecipeBenchmark.Run(
            Option("--families", "garden,untested,hard").Split(','),
            int.Parse(Option("--first", "1"), CultureInfo.InvariantCulture),
            int.Parse(Option("--instances", "50"), CultureInfo.InvariantCulture),
            double.Parse(Option("--cap", "20"), CultureInfo.InvariantCulture),
            Option("--peers", "SCIP,SAT,HIGHS").Split(',', StringSplitOptions.RemoveEmptyEntries)
        )
            ? 0
            : 1;
    case "heap-export":
        HeapMembers.Export(args[1], Whole(args[2]), Whole(args[3]));
        return 0;
    case "heap-time":
        HeapMembers.Time(args[1], Whole(args[2]), Whole(args[3]), Number(args[4]));
        return 0;
    case "heap-convergence":
        HeapConvergence.Print();
        return 0;
    case "forecast":
        return ForecastBenchmark.Run(Whole(args.ElementAtOrDefault(1) ?? "20"), [7, 14, 30, 60]);
    case "mix":
        return MixBenchmark.Run() ? 0 : 1;
    default:
        Console.Error.WriteLine(
            "Which benchmark? recipe-search [--families garden,untested,hard] [--first 1] [--instances 50] [--cap 20] [--peers SCIP,SAT,HIGHS], mix, or forecast [HEAPS]; bench/heap/run calls the others."
        );
        return 2;
}

static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);

static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

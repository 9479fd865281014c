using System.Globalization;
using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>Our search against general solvers, instance by instance in turn, one thread each, the optimum compared.</summary>
internal static class RecipeBenchmark
{
    private const int Repeats = 5;
    private const double LongMilliseconds = 500;
    private const double Equal = 1e-6;

    /// <summary>Runs and prints; false if an optimum differed without an explanation.</summary>
    internal static bool Run(
        string[] families,
        int first,
        int instances,
        double capSeconds,
        string[] peers
    )
    {
        Say(
            $".NET {Environment.Version}; OR-Tools {OrTools()}; {instances} instances a family from seed {first}"
        );
        Say(
            $"peers: {string.Join("; ", peers.Select(PeerMip.Version))}; cap {capSeconds} s of wall time a solve"
        );
        Say($"ours: median of {Repeats} warm solves (one if longer than {LongMilliseconds} ms)");
        bool same = true;
        foreach (
            Family family in Family.All.Where(f =>
                families.Contains(f.Name, StringComparer.Ordinal)
            )
        )
        {
            same &= Run(family, first, instances, capSeconds, peers);
        }

        return same;
    }

    private static bool Run(
        Family family,
        int first,
        int instances,
        double capSeconds,
        string[] peers
    )
    {
        Say($"\n{family.Name}: {family.About}");
        Warm(family);
        var ours = new List<Outcome>();
        var theirs = peers.ToDictionary(p => p, _ => new List<Outcome>(), StringComparer.Ordinal);
        bool same = true;
        for (int seed = first; seed < first + instances; seed++)
        {
            ChanceProblem problem = family.Make(seed);
            Outcome own = Ours(problem);
            ours.Add(own);
            if (own.Amounts.Length > 0 && !PlainCheck.Holds(problem, own.Amounts))
            {
                Say($"{seed, 3}  our amounts do not hold by the plain count");
                same = false;
            }

            string line = $"{seed, 3}  ours {own}";
            foreach (string peer in peers)
            {
                Outcome other = PeerMip.Solve(peer, problem, capSeconds);
                theirs[peer].Add(other);
                string difference = Difference(problem, own, other, out bool fault);
                same &= !fault;
                line += $" | {peer} {other}{difference}";
            }

            Say(line);
        }

        Say($"{family.Name}, processor ms: {Summary("ours", ours)}");
        foreach (string peer in peers)
        {
            Say(
                $"{family.Name}, processor ms: {Summary(peer, theirs[peer])}; {Ratio(ours, theirs[peer])}"
            );
        }

        return same;
    }

    private static void Warm(Family family)
    {
        for (int seed = 1001; seed <= 1010; seed++)
        {
            ChanceSearch.Solve(family.Make(seed), SearchBudget.Default with { Nodes = 3000 });
        }
    }

    private static Outcome Ours(ChanceProblem problem)
    {
        var times = new List<double>();
        ChanceAnswer answer;
        do
        {
            double before = ProcessorClock.Milliseconds;
            answer = ChanceSearch.Solve(problem);
            times.Add(ProcessorClock.Milliseconds - before);
        } while (times.Count < Repeats && times[0] < LongMilliseconds);
        double value = answer.Amounts.Length > 0 ? answer.Objectives[0] : double.NaN;
        return new Outcome(answer.ProvenBest, value, answer.Amounts, Rank(times, 0.5));
    }

    /// <summary>What two proofs disagree in; empty if in nothing. A fault unless rounding of the peer explains it.</summary>
    private static string Difference(
        ChanceProblem problem,
        Outcome own,
        Outcome other,
        out bool fault
    )
    {
        fault = false;
        if (!own.Proven || !other.Proven)
        {
            // What a peer found within its time must not be better than what we call the best.
            bool better = own.Proven && other.Value < Least(own.Value) - Equal;
            if (!better)
            {
                return "";
            }
        }
        else if (
            Math.Abs(Least(own.Value) - Least(other.Value)) <= Equal
            || (double.IsNaN(own.Value) && double.IsNaN(other.Value))
        )
        {
            return "";
        }

        if (other.Amounts.Length > 0 && other.Value < Least(own.Value))
        {
            ShareAnswer judged = ChanceSearch.EvaluateShare(problem, other.Amounts);
            if (!judged.Reached)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $" (its amounts hold in {judged.Share:P1} only, exactly counted)"
                );
            }
        }

        if (
            own.Amounts.Length > 0
            && own.Value < Least(other.Value)
            && PlainCheck.Holds(problem, own.Amounts)
        )
        {
            // The peer called a worse answer the best: it cut ours off by its own rounding.
            return " (WORSE, though called proven: our amounts hold by the plain count)";
        }

        fault = true;
        return " DIFFERENT";
    }

    private static double Least(double value) =>
        double.IsNaN(value) ? double.PositiveInfinity : value;

    private static string Summary(string name, List<Outcome> list)
    {
        double[] times = [.. list.Select(o => o.Milliseconds)];
        int proven = list.Count(o => o.Proven);
        int infeasible = list.Count(o => o.Proven && double.IsNaN(o.Value));
        string sign = proven < list.Count ? ">= " : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name} median {Rank(times, 0.5):F1}, 95th percentile {sign}{Rank(times, 0.95):F1}, proven {proven} of {list.Count} ({infeasible} infeasible)"
        );
    }

    /// <summary>Median over the instances of peer's time over ours; a capped solve counts with the cap, so that it is at least that.</summary>
    private static string Ratio(List<Outcome> ours, List<Outcome> theirs)
    {
        double[] ratios = [.. ours.Zip(theirs, (a, b) => b.Milliseconds / a.Milliseconds)];
        int capped = theirs.Count(o => !o.Proven);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"median ratio {(capped > 0 ? ">= " : "")}{Rank(ratios, 0.5):F0} ({capped} capped)"
        );
    }

    /// <summary>The value at a rank: the smallest with at least that share of the values at or below it.</summary>
    private static double Rank(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Max(0, (int)Math.Ceiling(share * sorted.Length) - 1)];
    }

    private static string OrTools() =>
        typeof(Google.OrTools.LinearSolver.Solver).Assembly.GetName().Version?.ToString() ?? "?";

    private static void Say(FormattableString text)
    {
        Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
        Console.Out.Flush();
    }

    private static void Say(string text)
    {
        Console.WriteLine(text);
        Console.Out.Flush();
    }
}

using System.Globalization;

namespace Heapwright.Numerics.Search;

/// <summary>The border control of <see cref="ChanceProblem"/>.</summary>
internal static class ChanceProblemCheck
{
    /// <summary>Refuses sizes that do not fit together, NaN, infinities and bounds outside their range.</summary>
    internal static void Check(ChanceProblem p)
    {
        int n = p.Lower.Length;
        Range(nameof(p.Lower) + ".Length", n, 1, ChanceProblem.MostVariables);
        Size(nameof(p.Upper), p.Upper, n);
        if (p.Continuous.Length is not 0 && p.Continuous.Length != n)
        {
            throw Wrong(nameof(p.Continuous) + ".Length", p.Continuous.Length, $"0 or {n}");
        }

        Range(
            "number of continuous variables",
            p.Continuous.Count(c => c),
            0,
            ChanceProblem.MostContinuous
        );
        for (int i = 0; i < n; i++)
        {
            Bounds(p, i);
        }

        Range(nameof(p.Objectives) + ".Length", p.Objectives.Length, 1, 3);
        foreach (double[] objective in p.Objectives)
        {
            Size(nameof(p.Objectives), objective, n);
            Finite(nameof(p.Objectives), objective);
        }

        Range(nameof(p.FreeSlopes) + ".Length", p.FreeSlopes.Length, 0, ChanceProblem.MostRows);
        Finite(nameof(p.FreeSlopes), p.FreeSlopes);
        Size(nameof(p.Nominal), p.Nominal, p.FreeSlopes.Length * n);
        Finite(nameof(p.Nominal), p.Nominal);
        Range(nameof(p.ScenarioCount), p.ScenarioCount, 0, ChanceProblem.MostScenarios);
        Size(nameof(p.Scenarios), p.Scenarios, p.FreeSlopes.Length * n * p.ScenarioCount);
        Finite(nameof(p.Scenarios), p.Scenarios);
        Range(nameof(p.Limits) + ".Length", p.Limits.Length, 0, ChanceProblem.MostRows);
        Finite(nameof(p.Limits), p.Limits);
        Size(nameof(p.LimitCoefficients), p.LimitCoefficients, p.Limits.Length * n);
        Finite(nameof(p.LimitCoefficients), p.LimitCoefficients);
        Between(nameof(p.Chance), p.Chance, 0, 1);
        Between(nameof(p.FreeMaximum), p.FreeMaximum, 0, 1e12);
        Between(nameof(p.FreePreferred), p.FreePreferred, -1e12, 1e12);
        if (p.FreePreferredSlopes.Length > 0)
        {
            Size(nameof(p.FreePreferredSlopes), p.FreePreferredSlopes, n);
            Finite(nameof(p.FreePreferredSlopes), p.FreePreferredSlopes);
        }
    }

    /// <summary>Refuses amounts of the wrong length or with NaN, infinities or negative values.</summary>
    internal static void Amounts(ChanceProblem p, ReadOnlySpan<double> x)
    {
        if (x.Length != p.Variables)
        {
            throw Wrong("amounts.Length", x.Length, Text(p.Variables));
        }

        for (int i = 0; i < x.Length; i++)
        {
            Between($"amounts[{i}]", x[i], 0, ChanceProblem.LargestAmount);
        }
    }

    /// <summary>Refuses a whole number outside its range.</summary>
    internal static void Range(string name, int value, int low, int high)
    {
        if (value < low || value > high)
        {
            throw Wrong(name, value, $"{low} to {high}");
        }
    }

    /// <summary>Refuses NaN and values outside a closed range.</summary>
    internal static void Between(string name, double value, double low, double high)
    {
        if (!(value >= low && value <= high))
        {
            throw Wrong(name, value, $"{Text(low)} to {Text(high)}");
        }
    }

    private static void Bounds(ChanceProblem p, int i)
    {
        Between($"{nameof(p.Lower)}[{i}]", p.Lower[i], 0, ChanceProblem.LargestAmount);
        Between($"{nameof(p.Upper)}[{i}]", p.Upper[i], p.Lower[i], ChanceProblem.LargestAmount);
        if (p.IsContinuous(i))
        {
            return;
        }

        if (p.Lower[i] != Math.Floor(p.Lower[i]))
        {
            throw Wrong(
                $"{nameof(p.Lower)}[{i}]",
                p.Lower[i],
                "a whole number (or flag the variable continuous)"
            );
        }

        if (p.Upper[i] != Math.Floor(p.Upper[i]))
        {
            throw Wrong(
                $"{nameof(p.Upper)}[{i}]",
                p.Upper[i],
                "a whole number (or flag the variable continuous)"
            );
        }
    }

    private static void Size(string name, double[] values, int length)
    {
        if (values.Length != length)
        {
            throw Wrong(name + ".Length", values.Length, Text(length));
        }
    }

    private static void Finite(string name, double[] values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!(Math.Abs(values[i]) <= 1e15))
            {
                throw Wrong($"{name}[{i}]", values[i], "a finite number of magnitude up to 1E+15");
            }
        }
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The one shape of a refusal: what, the value found, what is allowed.</summary>
    internal static ArgumentException Wrong(string name, double value, string allowed) =>
        new($"{name} is {Text(value)}; allowed is {allowed}.", name);
}

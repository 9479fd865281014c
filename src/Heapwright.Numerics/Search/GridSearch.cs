namespace Heapwright.Numerics.Search;

/// <summary>
/// Continuous amounts under several scenarios: they are put on a grid, the whole problem is searched, and the grid is narrowed
/// around what was found. Good, deterministic, never called proven.
/// </summary>
internal sealed class GridSearch(PreparedProblem full, SearchBudget budget)
{
    private const int FirstSteps = 8;
    private const int Rounds = 5;
    private const int Finer = 4;

    private readonly ChanceProblem _source = full.Source;
    private readonly ShareSweep _judge = new(full);
    private readonly int _n = full.N;

    internal ChanceAnswer Run()
    {
        // Without the nominal rows nothing is feasible; they alone can be settled exactly.
        var clock = new SearchClock(budget);
        ChanceAnswer nominal = new MixedSearch(
            new PreparedProblem(_source.NominalOnly()),
            clock
        ).Run();
        if (nominal.Status == SearchStatus.Infeasible)
        {
            return nominal;
        }

        double[] low = (double[])_source.Lower.Clone();
        double[] step =
        [
            .. Enumerable
                .Range(0, _n)
                .Select(i =>
                    _source.IsContinuous(i) ? (_source.Upper[i] - low[i]) / FirstSteps : 1
                ),
        ];
        double[] steps =
        [
            .. Enumerable
                .Range(0, _n)
                .Select(i => step[i] > 0 ? Math.Round((_source.Upper[i] - low[i]) / step[i]) : 0),
        ];
        double[]? best = null;
        long nodes = clock.Nodes;
        for (int round = 0; round < Rounds && nodes < budget.Nodes; round++)
        {
            var part = new SearchClock(
                budget with
                {
                    Nodes = Math.Max(1, (budget.Nodes - nodes) / (Rounds - round)),
                }
            );
            ChanceAnswer answer = new StagedSearch(
                new PreparedProblem(OnGrid(low, step, steps)),
                part
            ).Run();
            nodes += part.Nodes;
            if (answer.Amounts.Length == 0)
            {
                if (best is not null || round == Rounds - 1)
                {
                    break;
                }

                Refine(low, step, steps, null);
                continue;
            }

            double[] found =
            [
                .. Enumerable
                    .Range(0, _n)
                    .Select(i =>
                        Math.Clamp(
                            low[i] + (step[i] * answer.Amounts[i]),
                            _source.Lower[i],
                            _source.Upper[i]
                        )
                    ),
            ];
            if (_judge.Judge(found).Reached && (best is null || Better(found, best)))
            {
                best = found;
            }

            if (
                part.Ended
                && (budget.Cancellation.IsCancellationRequested || (budget.Stop?.Invoke() ?? false))
            )
            {
                break;
            }

            Refine(low, step, steps, best ?? found);
        }

        return Answer(best, nominal, nodes);
    }

    private ChanceAnswer Answer(double[]? best, ChanceAnswer nominal, long nodes)
    {
        if (best is null)
        {
            return new ChanceAnswer
            {
                Status = SearchStatus.Unknown,
                Amounts = [],
                Bound = nominal.Bound,
                Nodes = nodes,
            };
        }

        ShareAnswer share = _judge.Judge(best);
        return new ChanceAnswer
        {
            Status = SearchStatus.Feasible,
            Amounts = best,
            FreeLow = share.FreeLow,
            FreeHigh = share.FreeHigh,
            Free = share.Free,
            Share = share.Share,
            Objectives =
            [
                .. Enumerable
                    .Range(0, _source.Objectives.Length)
                    .Select(o => full.Objective(o, best)),
            ],
            Bound = nominal.Bound,
            Nodes = nodes,
        };
    }

    private bool Better(double[] a, double[] b)
    {
        for (int o = 0; o < _source.Objectives.Length; o++)
        {
            double za = full.Objective(o, a);
            double zb = full.Objective(o, b);
            if (Math.Abs(za - zb) > PreparedProblem.Width(zb))
            {
                return za < zb;
            }
        }

        return false;
    }

    /// <summary>A finer grid: around the centre, or over the whole range when nothing was found yet.</summary>
    private void Refine(double[] low, double[] step, double[] steps, double[]? centre)
    {
        for (int i = 0; i < _n; i++)
        {
            if (!_source.IsContinuous(i) || step[i] == 0)
            {
                continue;
            }

            if (centre is null)
            {
                step[i] *= 0.5;
                steps[i] = Math.Round((_source.Upper[i] - _source.Lower[i]) / step[i]);
                continue;
            }

            // One old step to either side; the centre stays on the grid.
            double fine = step[i] / Finer;
            double down = Math.Min(
                Finer,
                Math.Floor(((centre[i] - _source.Lower[i]) / fine) + 1e-9)
            );
            double up = Math.Min(Finer, Math.Floor(((_source.Upper[i] - centre[i]) / fine) + 1e-9));
            low[i] = centre[i] - (down * fine);
            step[i] = fine;
            steps[i] = down + up;
        }
    }

    /// <summary>The problem in whole steps x = low + step·k, with one more variable, always 1, that carries the constants.</summary>
    private ChanceProblem OnGrid(double[] low, double[] step, double[] steps)
    {
        int n = _n + 1;
        int s = _source.ScenarioCount;
        double[] Put(double[] a, int rows, int lanes)
        {
            var to = new double[rows * n * lanes];
            for (int r = 0; r < rows; r++)
            {
                for (int i = 0; i < _n; i++)
                {
                    for (int lane = 0; lane < lanes; lane++)
                    {
                        double v = a[(((r * _n) + i) * lanes) + lane];
                        to[(((r * n) + i) * lanes) + lane] = v * Step(i);
                        to[(((r * n) + _n) * lanes) + lane] += v * Low(i);
                    }
                }
            }

            return to;
        }

        double Step(int i) => _source.IsContinuous(i) ? step[i] : 1;
        double Low(int i) => _source.IsContinuous(i) ? low[i] : 0;
        return new ChanceProblem
        {
            Lower =
            [
                .. Enumerable
                    .Range(0, _n)
                    .Select(i => _source.IsContinuous(i) ? 0 : _source.Lower[i]),
                1,
            ],
            Upper =
            [
                .. Enumerable
                    .Range(0, _n)
                    .Select(i => _source.IsContinuous(i) ? steps[i] : _source.Upper[i]),
                1,
            ],
            Objectives = [.. _source.Objectives.Select(c => Put(c, 1, 1))],
            FreeSlopes = _source.FreeSlopes,
            Nominal = Put(_source.Nominal, _source.Rows, 1),
            ScenarioCount = s,
            Scenarios = Put(_source.Scenarios, _source.Rows, s),
            Chance = _source.Chance,
            LimitCoefficients = Put(_source.LimitCoefficients, _source.Limits.Length, 1),
            Limits = _source.Limits,
            FreeMaximum = _source.FreeMaximum,
        };
    }
}

using CsCheck;
using Heapwright.Core.Hygiene;

namespace Heapwright.Core.Tests.Hygiene;

/// <summary>What must hold of any record; CsCheck prints its seed where it does not.</summary>
public class HygienePropertyTests(ITestOutputHelper output)
{
    private static readonly HygieneRule[] Rules =
    [
        Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(55),
                Days = 4,
                Order = DayOrder.Open,
                Turns = 2,
            }
        ),
        Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(55, HighestCelsius: 76.7),
                Days = 3,
                Order = DayOrder.Any,
                Turns = 2,
                TurnsApartDays = 2,
            }
        ),
        Logs.Rule(new HeatPeriod { Band = new HeatBand(60), Days = 2 }),
        Logs.Rule(new HeatPeriod { Band = new HeatBand(70), Hours = 1 }),
        Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(40),
                Days = 3,
                Order = DayOrder.Open,
            },
            new HeatSpell(new HeatBand(55, MustExceed: true), 4)
        ),
        Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(40, MustExceed: true),
                Days = 4,
                MeanAboveCelsius = 60,
            }
        ),
    ];

    private static readonly Gen<LogReading> Reading = Gen.Select(
        Gen.Double[0, 9],
        Gen.OneOf<double>(38, 48, 55, 58, 62, 71, 78),
        Gen.Int[0, 9],
        (day, celsius, probe) => Logs.At(day, celsius, probe < 9 ? "core" : "edge")
    );

    private static readonly Gen<(LogReading[] Readings, double[] Turns)> Record = Gen.Select(
        Gen.Select(Reading.Array[1, 4], Gen.Int[0, 9], Gen.Int[1, 9], Gen.Double[55, 72]),
        Gen.Double[0, 9].Array[0, 4],
        (r, turns) =>
        {
            var (odd, from, length, celsius) = r;
            var run = Enumerable.Range(from, length).Select(d => Logs.At(d + 0.4, celsius));
            return ((LogReading[])[.. odd, .. run], turns);
        }
    );

    [Fact]
    public void Rows_Shuffled_ChangeNothing() =>
        Gen.Select(Record, Gen.Int)
            .Sample(
                (record, seed) =>
                {
                    var shuffled = record.Readings.ToArray();
                    new Random(seed).Shuffle(shuffled);
                    Assert.Equal(
                        Findings(record.Readings, record.Turns),
                        Findings(shuffled, [.. record.Turns.Reverse()])
                    );
                },
                writeLine: output.WriteLine,
                iter: 2000
            );

    // Colder than any rule asks, at any probe, known or new: nothing that was not met becomes met.
    [Fact]
    public void ColdReading_Added_NeverImprovesAVerdict() =>
        Gen.Select(Record, Gen.Double[0, 9], Gen.OneOf<string>("core", "edge", "new"))
            .Sample(
                (record, day, probe) =>
                {
                    LogReading[] more = [.. record.Readings, Logs.At(day, 39, probe)];
                    Compare(record.Readings, more, record.Turns);
                },
                writeLine: output.WriteLine,
                iter: 4000
            );

    [Fact]
    public void Probe_SplitInTwo_NeverImprovesAVerdict() =>
        Gen.Select(Record, Gen.Int[0, 255])
            .Sample(
                (record, which) =>
                {
                    var split = record
                        .Readings.Select(
                            (r, i) =>
                                (which >> (i % 8) & 1) == 1 ? r with { Probe = r.Probe + " 2" } : r
                        )
                        .ToArray();
                    Compare(record.Readings, split, record.Turns);
                },
                writeLine: output.WriteLine,
                iter: 4000
            );

    [Fact]
    public void Turn_TakenAway_NeverImprovesAVerdict() =>
        Record
            .Where(r => r.Turns.Length > 0)
            .Sample(
                record =>
                {
                    foreach (var rule in Rules)
                    {
                        var all = Judge(rule, record.Readings, record.Turns);
                        var fewer = Judge(rule, record.Readings, record.Turns[1..]);
                        Assert.True(Rank(fewer) <= Rank(all), $"{all} became {fewer}");
                    }
                },
                writeLine: output.WriteLine,
                iter: 2000
            );

    [Fact]
    public void Records_OfTheseTests_GiveEveryVerdict()
    {
        var seen = new HashSet<RuleVerdict>();
        Record.Sample(
            record =>
            {
                lock (seen)
                {
                    seen.UnionWith(Rules.Select(r => Judge(r, record.Readings, record.Turns)));
                }
            },
            iter: 2000
        );

        Assert.Superset(
            new HashSet<RuleVerdict>
            {
                RuleVerdict.Met,
                RuleVerdict.NotMet,
                RuleVerdict.Depends,
                RuleVerdict.CannotTell,
            },
            seen
        );
    }

    private static void Compare(LogReading[] before, LogReading[] after, double[] turns)
    {
        foreach (var rule in Rules)
        {
            var (was, now) = (Judge(rule, before, turns), Judge(rule, after, turns));
            // Met and depends rest on what is shown; not met and cannot tell on what is not.
            Assert.True(Shown(now) <= Shown(was), $"{was} became {now}");
        }
    }

    private static int Shown(RuleVerdict verdict) =>
        verdict switch
        {
            RuleVerdict.Met => 2,
            RuleVerdict.Depends => 1,
            _ => 0,
        };

    private static int Rank(RuleVerdict verdict) =>
        verdict == RuleVerdict.NotMet ? -1 : Shown(verdict);

    private static RuleVerdict Judge(HygieneRule rule, LogReading[] readings, double[] turns) =>
        Logs.Verdict(rule, HeatLog.Of(readings, turns.Select(Logs.Turn)));

    private static string Findings(LogReading[] readings, double[] turns)
    {
        var log = HeatLog.Of(readings, turns.Select(Logs.Turn));
        return string.Join(
            "\n",
            Rules
                .Select(r => RuleJudge.Judge(r, log, ProcessKind.Windrow))
                .Select(f => $"{f.Verdict} {f.Shown} {string.Join(";", f.Ways)}")
                .Concat(log.Gaps().Select(g => g.ToString()))
                .Concat(HeatDose.Of(log, Logs.Formulas, null).Select(d => d.ToString()))
        );
    }
}

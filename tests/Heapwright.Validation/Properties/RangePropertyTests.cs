using CsCheck;

namespace Heapwright.Validation.Properties;

/// <summary>What must hold of ranges: they pass through, they never narrow by being widened, and a seed is a seed.</summary>
public class RangePropertyTests(ITestOutputHelper output)
{
    private const int Points = 1024;

    /// <summary>
    /// How far a 5th or 95th percentile of 1,024 points may be off, as a share of twice its distance from the middle. Its
    /// standard error in probability is √(0.05 × 0.95/1024) = 0.0068; a run makes some 2,000 comparisons, so five of them
    /// are allowed, times √2 for two percentiles compared. In the unit of the answer that is divided by the density there,
    /// 0.05 a unit in a tail that falls off exponentially, in which the percentile lies ln 10 units from the middle; no
    /// answer has a longer tail. It is what plain random points would give; quasi-random ones are at least as good.
    /// </summary>
    private static readonly double EndError =
        5 * Math.Sqrt(2) * Math.Sqrt(0.05 * 0.95 / Points) / 0.05 / (2 * Math.Log(10));

    // One value in each of 1,024 equal strata: a percentile is off by at most half a stratum, 0.5/1024 in probability.
    // On the logit scale of shares (50, 60, 70: standard deviations 0.2465 below and 0.2686 above) that is
    //   ends: 0.000488/0.1031 × 0.2686 × 0.21…0.25 = 0.0003, and in the middle 0.000488/0.3989 × 0.2686 × 0.24 = 0.00008.
    [Fact]
    public void Mix_OneIngredientWithARangeOfMoisture_PassesItThrough() =>
        Gen.Int[0, int.MaxValue]
            .Sample(
                seed =>
                {
                    var moisture = One(new Known(50, 60, 70), Known.Exact(1.5), seed).Mixed()[
                        "moisture_pct_wb"
                    ];
                    Assert.Equal(50, moisture.Low(), 0.03);
                    Assert.Equal(60, moisture.Typical(), 0.009);
                    Assert.Equal(70, moisture.High(), 0.03);
                },
                writeLine: output.WriteLine,
                iter: 50
            );

    // C:N 45/N with N 1, 1.5, 2.25 (log scale, standard deviation ln 1.5/1.645 = 0.2465 both ways): 20, 30, 45;
    // ends off by at most 0.000488/0.1031 × 0.2465 = 0.12 %, the middle by 0.000488/0.3989 × 0.2465 = 0.03 %.
    [Fact]
    public void Mix_OneIngredientWithARangeOfNitrogen_GivesTheRangeOfItsRatio() =>
        Gen.Int[0, int.MaxValue]
            .Sample(
                seed =>
                {
                    var ratio = One(Known.Exact(60), new Known(1, 1.5, 2.25), seed).Mixed()[
                        "carbon_nitrogen_ratio"
                    ];
                    Assert.Equal(20, ratio.Low(), 20 * 0.0012);
                    Assert.Equal(30, ratio.Typical(), 30 * 0.0003);
                    Assert.Equal(45, ratio.High(), 45 * 0.0012);
                },
                writeLine: output.WriteLine,
                iter: 50
            );

    // With one uncertain input and an answer that only rises (or only falls) with it, every point of the sample moves
    // outward, so no percentile can move inward: no tolerance but rounding.
    [Fact]
    public void Mix_OneRangeWidened_NeverNarrowsTheAnswer() =>
        Gen.Select(
                Heaps.Exact,
                Gen.Double[0.01, 0.3],
                Gen.Double[0.01, 0.3],
                Gen.Double[1, 2],
                Gen.Double[1, 2],
                Gen.Int[0, 3]
            )
            .Sample(
                (heap, down, up, moreDown, moreUp, what) =>
                {
                    var narrow = With(heap, what, down, up);
                    var wide = With(heap, what, down * moreDown, up * moreUp);
                    var field = what switch
                    {
                        0 => "carbon_nitrogen_ratio",
                        1 => "moisture_pct_wb",
                        2 => "bulk_density_kg_m3",
                        _ => "carbon_kg",
                    };
                    var (a, b) = (narrow.Mixed()[field], wide.Mixed()[field]);
                    Assert.True(
                        b.Low() <= a.Low() * (1 + 1e-9),
                        $"{field}: low {b.Low()} above {a.Low()}"
                    );
                    Assert.True(
                        b.High() >= a.High() * (1 - 1e-9),
                        $"{field}: high {b.High()} below {a.High()}"
                    );
                },
                writeLine: output.WriteLine,
                iter: 60
            );

    // Everything uncertain at once, and one range widened the same way on both sides of its scale: the width must not
    // shrink by more than the errors of its two ends. The two answers share their points and differ in one input that
    // moves the same way in both, so they are taken to be correlated by 0.9: √(2 × 0.1) instead of √2.
    [Fact]
    public void Mix_ManyRangesAndOneWidened_NeverNarrowsByMoreThanTheSamplingError()
    {
        var allowed = 1 - (2 * EndError * Math.Sqrt(0.1));
        var least = double.PositiveInfinity;
        Gen.Select(Heaps.Any, Gen.Double[0.05, 0.3], Gen.Double[1.05, 2], Gen.Int[0, 100])
            .Where((heap, _, _, which) => heap.Parts[which % heap.Parts.Count].Material is null)
            .Sample(
                (heap, wide, more, which) =>
                {
                    Heap Spread(double by) =>
                        heap with
                        {
                            Parts =
                            [
                                .. heap.Parts.Select(
                                    (p, i) =>
                                        i != which % heap.Parts.Count
                                            ? p
                                            : p with
                                            {
                                                // The name keeps its points the same.
                                                Name = "zzq widened",
                                                Nitrogen = new Known(
                                                    p.Nitrogen!.Value.Typical * Math.Exp(-by),
                                                    p.Nitrogen!.Value.Typical,
                                                    p.Nitrogen!.Value.Typical * Math.Exp(by)
                                                ),
                                            }
                                ),
                            ],
                        };
                    var a = Spread(wide).Mixed()["carbon_nitrogen_ratio"];
                    var b = Spread(wide * more).Mixed()["carbon_nitrogen_ratio"];
                    var (before, after) = (a.High() - a.Low(), b.High() - b.Low());
                    least = Math.Min(least, after / before);
                    Assert.True(
                        after >= before * allowed,
                        $"{before} became {after} in {Spread(wide).Json()}"
                    );
                },
                writeLine: output.WriteLine,
                iter: 60
            );
        output.WriteLine(
            $"the width after widening was at least {least:F3} of what it was; allowed {allowed:F3}"
        );
    }

    [Fact]
    public void Mix_SameSeed_GivesTheSameBytes() =>
        Heaps.Any.Sample(
            heap => Assert.Equal(heap.Mixed().ToJsonString(), heap.Mixed().ToJsonString()),
            writeLine: output.WriteLine,
            iter: 20
        );

    [Fact]
    public void Mix_OtherSeed_IsClose()
    {
        var most = 0.0;
        Heaps.Any.Sample(
            heap =>
            {
                var a = heap.Mixed();
                var b = (heap with { Seed = heap.Seed + 1 }).Mixed();
                foreach (var field in Heap.Amounts.Concat(Heap.Ratios))
                {
                    // The air after settling stops at 0 in a drowned heap: where many cases stand on the stop there is no
                    // tail to measure by.
                    if (a[field] is null || field == "free_air_space_settled_pct")
                    {
                        continue;
                    }

                    // Each side of the range is measured by itself: a lopsided range has a long end and a short one.
                    var (low, high) = (
                        a[field].Typical() - a[field].Low(),
                        a[field].High() - a[field].Typical()
                    );
                    Near(a[field].Low(), b[field].Low(), 2 * low);
                    Near(a[field].High(), b[field].High(), 2 * high);
                    Near(a[field].Typical(), b[field].Typical(), low + high);

                    void Near(double x, double y, double width)
                    {
                        var rounding = 1e-9 * Math.Abs(x);
                        most = Math.Max(most, Math.Abs(x - y) / Math.Max(width, rounding + 1e-300));
                        Assert.True(
                            Math.Abs(x - y) <= (EndError * width) + rounding,
                            $"{field}: {a[field]!.ToJsonString()} and {b[field]!.ToJsonString()} in {heap.Json()}"
                        );
                    }
                }
            },
            writeLine: output.WriteLine,
            iter: 40
        );
        output.WriteLine(
            $"two seeds differed by at most {most:F3} of the width; allowed {EndError:F3}"
        );
    }

    private static Heap One(Known moisture, Known nitrogen, int seed) =>
        new(
            [
                new Stuff
                {
                    Name = "zzq alone",
                    Carbon = Known.Exact(45),
                    Nitrogen = nitrogen,
                    Moisture = moisture,
                    Density = Known.Exact(300),
                    Amount = Known.Exact(10),
                    Unit = "kg",
                },
            ],
            0,
            seed
        );

    private static Heap With(Heap heap, int what, double down, double up)
    {
        Known Wide(Known? value) =>
            new(
                value!.Value.Typical * (1 - down),
                value.Value.Typical,
                value.Value.Typical * (1 + up)
            );
        var first = heap.Parts[0];
        var changed = what switch
        {
            0 => first with { Nitrogen = Wide(first.Nitrogen) },
            1 => first with
            {
                Moisture = new Known(
                    first.Moisture!.Value.Typical * (1 - down),
                    first.Moisture.Value.Typical,
                    first.Moisture.Value.Typical + ((100 - first.Moisture.Value.Typical) * up)
                ),
            },
            2 => first with { Unit = "l", Density = Wide(first.Density) },
            _ => first with { Amount = Wide(first.Amount) },
        };
        // Exact everywhere else: the mixing factor too, which is a range of its own where anything is uncertain.
        return heap with
        {
            Parts = [changed with { Name = "zzq widened" }, .. heap.Parts.Skip(1)],
            MixingFactor = 0.85,
        };
    }
}

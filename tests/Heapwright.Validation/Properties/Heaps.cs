using CsCheck;

namespace Heapwright.Validation.Properties;

/// <summary>Questions to <c>mix</c> by chance: own stuff and stuff of the library, exact and not, in all kinds of units.</summary>
internal static class Heaps
{
    private static readonly Gen<string> Unit = Gen.OneOf(
        "kg",
        "lb",
        "l",
        "ft3",
        "bucket",
        "barrow"
    );

    private static readonly Gen<string> ExactUnit = Gen.OneOf("kg", "lb", "l", "ft3", "bucket");

    private static readonly Gen<string> Material = Gen.OneOf(
        "grass_clippings_fresh",
        "leaves_mixed_dry",
        "wood_chips_coarse",
        "kitchen_scraps",
        "coffee_grounds",
        "horse_manure_straw"
    );

    /// <summary>Own stuff with everything known exactly; the density always, so that every figure is there.</summary>
    public static readonly Gen<Heap> Exact = Of(Own(Exactly, Exactly, ExactUnit), 6);

    /// <summary>Stuff of any kind.</summary>
    public static readonly Gen<Heap> Any = Of(
        Gen.OneOf<Stuff>(
            Own(Positive, Percent, Unit),
            Own(Exactly, Exactly, ExactUnit),
            Gen.Select(Material, Positive(0.1, 30), Unit)
                .Select(
                    (material, amount, unit) =>
                        new Stuff
                        {
                            Material = material,
                            Amount = amount,
                            Unit = unit,
                        }
                )
        ),
        5
    );

    private static Gen<Heap> Of(Gen<Stuff> stuff, int most) =>
        Gen.Select(stuff.Array[1, most], Gen.Double[0, 80], Gen.Int[0, 1000], Gen.Bool.Array[most])
            .Select(
                (parts, water, seed, named) =>
                    new Heap(
                        [
                            .. parts.Select(
                                (p, i) =>
                                    p.Material is null && named[i]
                                        ? p with
                                        {
                                            // A name that no library could know.
                                            Name = "zzq " + (char)('a' + i),
                                        }
                                        : p
                            ),
                        ],
                        water,
                        seed
                    )
            );

    private static Gen<Stuff> Own(
        Func<double, double, Gen<Known>> positive,
        Func<double, double, Gen<Known>> percent,
        Gen<string> unit
    ) =>
        Gen.Select(
                positive(25, 50),
                positive(0.3, 5),
                percent(5, 88),
                positive(50, 900),
                percent(2, 20),
                positive(0.1, 30),
                unit
            )
            .Select(
                (c, n, m, d, a, amount, u) =>
                    new Stuff
                    {
                        Carbon = c,
                        Nitrogen = n,
                        Moisture = m,
                        Density = d,
                        Ash = a,
                        Amount = amount,
                        Unit = u,
                    }
            );

    private static Gen<Known> Exactly(double low, double high) =>
        Gen.Double[low, high].Select(Known.Exact);

    private static Gen<Known> Positive(double low, double high) =>
        Gen.Select(Gen.Double[low, high], Gen.Double[0, 0.4], Gen.Double[0, 0.4])
            .Select(
                (typical, down, up) => new Known(typical / (1 + down), typical, typical * (1 + up))
            );

    private static Gen<Known> Percent(double low, double high) =>
        Gen.Select(Gen.Double[low, high], Gen.Double[0, 0.4], Gen.Double[0, 0.4])
            .Select(
                (typical, down, up) =>
                    new Known(typical * (1 - down), typical, typical + ((100 - typical) * up))
            );
}

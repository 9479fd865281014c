using Heapwright.Validation.Properties;

namespace Heapwright.Validation.Recipes;

/// <summary>A small exact question to <c>recipe</c>, which can be gone through completely by hand.</summary>
internal sealed record Instance(
    IReadOnlyList<Pick> Picks,
    (double Low, double High) Ratio,
    (double Low, double High) Moisture,
    double? LeastAir,
    (double Low, double High)? Volume,
    string Aim
)
{
    /// <summary>Litres in a bucket.</summary>
    public const double Bucket = 12;

    /// <summary>Filled volume over loose sum.</summary>
    public const double Factor = 0.85;

    /// <summary>An instance from a seed: shapes, bounds and tightness vary.</summary>
    public static Instance Of(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        var n = random.Next(3, 5);
        var picks = Enumerable
            .Range(0, n)
            .Select(i => new Pick(
                "zzq " + (char)('a' + i),
                Between(38, 50),
                i % 2 == 0 ? Between(1.5, 4) : Between(0.3, 1.2),
                i % 2 == 0 ? Between(60, 85) : Between(8, 40),
                i % 2 == 0 ? Between(150, 600) : Between(50, 200),
                Between(3, 20),
                random.Next(1, 6),
                // The last may be bought, sometimes the one before it too.
                i >= n - 1 - random.Next(2)
                    ? random.Next(1, 10)
                    : null
            ))
            .ToList();
        var ratio = Between(18, 32);
        var moist = Between(45, 58);
        var room = picks.Sum(p => p.Most) * Bucket * Factor;
        (double, double)? volume = random.Next(3) switch
        {
            0 => null,
            1 => (room * Between(0.1, 0.5), room * Between(0.5, 0.9)),
            _ => (room * Between(0.5, 0.9), room * 1.2),
        };
        return new Instance(
            picks,
            (ratio, ratio + Between(2, 12)),
            (moist, moist + Between(2, 10)),
            random.Next(2) == 0 ? Between(30, 65) : null,
            volume,
            random.Next(2) == 0 ? "least_cost" : "use_most"
        );
    }

    public string Json()
    {
        string Material(Pick p) =>
            $"\"name\":\"{p.Name}\",\"carbon_pct_db\":{Known.Text(p.Carbon)},\"nitrogen_pct_db\":{Known.Text(p.Nitrogen)},\"moisture_pct_wb\":{Known.Text(p.Moisture)},\"bulk_density_kg_m3\":{Known.Text(p.Density)},\"ash_pct_db\":{Known.Text(p.Ash)}";
        var have = Picks
            .Where(p => p.Price is null)
            .Select(p =>
                $"{{{Material(p)},\"amount\":{{\"value\":{p.Most},\"unit\":\"bucket\"}}}}"
            );
        var buy = Picks
            .Where(p => p.Price is not null)
            .Select(p =>
                $"{{{Material(p)},\"unit\":\"bucket\",\"price\":{Known.Text(p.Price!.Value)},\"limit\":{p.Most}}}"
            );
        static string Band(double low, double high) =>
            $"{{\"low\":{Known.Text(low)},\"high\":{Known.Text(high)}}}";
        var air = LeastAir is { } least ? $"{{\"low\":{Known.Text(least)},\"high\":null}}" : "null";
        // The volumes of the contract are in m³.
        var volume = Volume is { } v ? $",\"volume_m3\":{Band(v.Low / 1000, v.High / 1000)}" : "";
        return $"{{\"have\":[{string.Join(',', have)}],\"can_buy\":[{string.Join(',', buy)}],\"bands\":{{\"carbon_nitrogen_ratio\":{Band(Ratio.Low, Ratio.High)},\"moisture_pct_wb\":{Band(Moisture.Low, Moisture.High)},\"free_air_space_pct\":{air}}},\"mixing_volume_factor\":{Known.Text(Factor)},\"containers\":{{\"bucket\":{Known.Text(Bucket)}}},\"aim\":\"{Aim}\"{volume}}}";
    }
}

namespace Heapwright.Validation.Properties;

/// <summary>The mass balance of a heap by hand, from the definitions: an independent count.</summary>
internal sealed class Sums
{
    public double Wet { get; private set; }

    public double Dry { get; private set; }

    public double Carbon { get; private set; }

    public double Nitrogen { get; private set; }

    public double Ash { get; private set; }

    /// <summary>Litres, loose.</summary>
    public double Litres { get; private set; }

    public double Ratio => Carbon / Nitrogen;

    public double Moisture => 100 * (Wet - Dry) / Wet;

    public void Add(
        double litres,
        double density,
        double moisture,
        double carbon,
        double nitrogen,
        double ash
    )
    {
        var wet = litres * density / 1000;
        var dry = wet * (1 - (moisture / 100));
        Litres += litres;
        Wet += wet;
        Dry += dry;
        Carbon += dry * carbon / 100;
        Nitrogen += dry * nitrogen / 100;
        Ash += dry * ash / 100;
    }

    public void AddWater(double litres) => Wet += litres;

    /// <summary>Percent of a volume that water (1 kg/l), organic matter (1.6) and ash (2.5) leave free.</summary>
    public double Air(double filled) =>
        100 * (1 - (((Wet - Dry) + ((Dry - Ash) / 1.6) + (Ash / 2.5)) / filled));
}

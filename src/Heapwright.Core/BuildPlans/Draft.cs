namespace Heapwright.Core.BuildPlans;

/// <summary>A layer while the plan is being made.</summary>
internal sealed class Draft(LayerRole role, int pair)
{
    private readonly List<(Stuff Stuff, double Amount, bool InMiddle)> parts = [];

    public LayerRole Role { get; } = role;

    /// <summary>The pair it belongs to; -1 for none.</summary>
    public int Pair { get; } = pair;

    public IReadOnlyList<(Stuff Stuff, double Amount, bool InMiddle)> Parts => parts;

    /// <summary>Loose litres.</summary>
    public double Litres => parts.Sum(p => p.Amount * p.Stuff.PerUnit.LooseVolume);

    public double MiddleLitres =>
        parts.Where(p => p.InMiddle).Sum(p => p.Amount * p.Stuff.PerUnit.LooseVolume);

    public void Add(Stuff stuff, double amount, bool inMiddle = false)
    {
        if (amount <= 0)
        {
            return;
        }

        var same = parts.FindIndex(p => ReferenceEquals(p.Stuff, stuff) && p.InMiddle == inMiddle);
        if (same < 0)
        {
            parts.Add((stuff, amount, inMiddle));
        }
        else
        {
            parts[same] = (stuff, parts[same].Amount + amount, inMiddle);
        }
    }
}

using System.Text.Json.Nodes;
using Heapwright.Core.Diagnosis;
using UnitsNet;

namespace Heapwright.App.Contract;

/// <summary>The amounts that go with a cause, where the volume and the squeeze are known.</summary>
internal sealed class DiagnoseAmounts
{
    private readonly Assumptions assumptions;
    private readonly Dictionary<string, (string Code, string Field, RepairAmount Amount)> amounts =
        new(StringComparer.Ordinal);

    public DiagnoseAmounts(DiagnoseQuestion question, Assumptions assumptions)
    {
        this.assumptions = assumptions;
        if (question.VolumeM3 is not { } volume || question.Squeeze is not { } squeeze)
        {
            return;
        }

        if (RepairAmount.Water(volume, squeeze) is { } water)
        {
            amounts["too_dry"] = ("amount_water", "water_l", water);
        }

        if (RepairAmount.DryLeaves(volume, squeeze) is { } leaves)
        {
            amounts["too_wet"] = ("amount_leaves", "dry_leaves_l", leaves);
        }

        if (amounts.Count > 0)
        {
            assumptions.Say(
                "signs.amounts_assumed",
                assumptions.Measures.Heap(Volume.FromCubicMeters(volume))
            );
        }
    }

    /// <summary>The amount of a cause in words, or null.</summary>
    /// <param name="cause">The id of the cause.</param>
    public string? Sentence(string cause) =>
        amounts.TryGetValue(cause, out var found)
            ? Texts.Words.Of(
                "signs." + found.Code,
                assumptions.Measures.Culture,
                assumptions.Measures.Litres(
                    Roughly(found.Amount.Litres.Low),
                    Roughly(found.Amount.Litres.High)
                )
            )
            : null;

    // Two digits: no more is known.
    private static double Roughly(double litres)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(litres)) - 1);
        return Math.Round(litres / step) * step;
    }

    /// <summary>The amount of a cause, or null.</summary>
    /// <param name="cause">The id of the cause.</param>
    public JsonObject? Json(string cause) =>
        amounts.TryGetValue(cause, out var found)
            ? new JsonObject { [found.Field] = Contract.Json.Of(found.Amount.Litres) }
            : null;
}

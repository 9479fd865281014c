using Heapwright.App.Contract;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.App.Diary;

/// <summary>Reads what was thought of a reading, as it is kept.</summary>
internal static class VerdictReader
{
    /// <summary>The verdict.</summary>
    /// <param name="input">The object.</param>
    /// <exception cref="InputProblem">It is none.</exception>
    public static PlausibilityVerdict Read(Input input)
    {
        var fields = input.Fields("status", "reasons", "suggested_c");
        var status = (PlausibilityStatus)
            EntryWords.Number(
                EntryWords.Statuses,
                fields.Needed("status").Choice([.. EntryWords.Statuses])
            );
        EquatableList<Reason> reasons = fields["reasons"] is { } list
            ? [.. list.Items(0, 20).Select(OneReason)]
            : [];
        return new PlausibilityVerdict(
            status,
            reasons,
            fields["suggested_c"] is { } suggested
                ? Temperature.FromDegreesCelsius(
                    suggested.Number(EntryLimits.ColdestC, EntryLimits.HottestC)
                )
                : null
        );
    }

    private static Reason OneReason(Input input)
    {
        var fields = input.Fields("code", "values");
        return Reason.Of(
            fields.Needed("code").Text(100),
            [.. fields.Needed("values").Items(0, 20).Select(Value)]
        );
    }

    private static object Value(Input input) =>
        input.IsText ? input.Text()
        : input.IsObject
            ? Temperature.FromDegreesCelsius(
                input
                    .Fields("temperature_c")
                    .Needed("temperature_c")
                    .Number(double.MinValue, double.MaxValue)
            )
        : input.Number(double.MinValue, double.MaxValue);
}

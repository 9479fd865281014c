using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;
using NodaTime.Text;

namespace Heapwright.Web.Pages.AtHand;

/// <summary>Reads the fields of something at hand.</summary>
internal static class StockForm
{
    /// <summary>The entry that was typed; null where something was refused.</summary>
    public static StockEntry? Read(
        Posted typed,
        Guid id,
        string material,
        SiteContents contents,
        Here here
    )
    {
        var amount = typed.Number("amount");
        var unit = typed["unit"] ?? "";
        if (contents.Containers.Find(unit) is null)
        {
            typed.Refuse(Refusal.Of("unit", "sites.unit_unknown", unit));
        }

        var since = LocalDatePattern.Iso.Parse(typed["since"] ?? "");
        if (!since.Success)
        {
            typed.Refuse(
                Refusal.Of(
                    "since",
                    "sites.date_unclear",
                    typed["since"] ?? "",
                    LocalDatePattern.Iso.Format(here.Today)
                )
            );
        }
        else if (since.Value > here.Today)
        {
            typed.Refuse(Refusal.Of("since", "sites.date_future", here.Show.Day(since.Value)));
        }

        return typed.IsRefused
            ? null
            : new StockEntry
            {
                Id = id,
                Material = material,
                Name = typed["name"] ?? "",
                Amount = amount,
                Unit = unit,
                Since = since.Value,
                Giver = typed["giver"] ?? "",
                Note = typed["note"] ?? "",
            };
    }
}

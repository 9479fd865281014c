using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Planning;

/// <summary>Something that may be bought or fetched.</summary>
/// <param name="Words">What, in the person's words.</param>
/// <param name="Unit">In what unit.</param>
/// <param name="Price">The price of one, as typed; empty for nothing.</param>
/// <param name="Limit">The most that can be had, as typed; empty for no limit.</param>
public sealed record BuyLine(string Words, string Unit, string Price, string Limit)
{
    /// <summary>A line with nothing in it.</summary>
    public static BuyLine Empty { get; } = new("", "bale", "", "");

    /// <summary>Whether something was typed.</summary>
    public bool IsFilled => Words.Length > 0;

    private double? PriceValue { get; init; }

    private double? LimitValue { get; init; }

    /// <summary>The lines of an address or a form.</summary>
    /// <param name="read">Reads the values of a field.</param>
    /// <param name="typed">Takes the reasons where something is refused.</param>
    public static IReadOnlyList<BuyLine> ReadAll(
        Func<string, IReadOnlyList<string>> read,
        Posted typed
    )
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(typed);
        var words = read("buy_w");
        var lines = new List<BuyLine>();
        for (var i = 0; i < Math.Min(words.Count, RecipeAsk.MostToBuy); i++)
        {
            var line = new BuyLine(
                words[i].Trim() is { Length: > 100 } text ? text.Trim()[..100] : words[i].Trim(),
                At(read("buy_u"), i, "bale"),
                At(read("buy_p"), i, ""),
                At(read("buy_l"), i, "")
            );
            if (line.IsFilled)
            {
                lines.Add(
                    line with
                    {
                        PriceValue = Number(line.Price, $"buy_p{lines.Count}", typed),
                        LimitValue = Number(line.Limit, $"buy_l{lines.Count}", typed),
                    }
                );
            }
        }

        return lines;
    }

    /// <summary>The entry of <c>can_buy</c>.</summary>
    public JsonObject ToJson()
    {
        var json = new JsonObject { ["name"] = Words, ["unit"] = Unit };
        if (PriceValue is { } price)
        {
            json["price"] = price;
        }

        if (LimitValue is { } limit)
        {
            json["limit"] = limit;
        }

        return json;
    }

    private static double? Number(string text, string field, Posted typed)
    {
        if (text.Length == 0)
        {
            return null;
        }

        if (NumberText.Read(text, field, CultureInfo.CurrentCulture, out var value) is { } refusal)
        {
            typed.Refuse(refusal);
            return null;
        }

        return value;
    }

    private static string At(IReadOnlyList<string> values, int place, string otherwise) =>
        place < values.Count && values[place].Trim() is { Length: > 0 and <= 40 } text
            ? text
            : otherwise;
}

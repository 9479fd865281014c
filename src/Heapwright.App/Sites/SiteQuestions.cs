using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.Core.Materials;

namespace Heapwright.App.Sites;

/// <summary>Puts what a site has into the questions of the contract.</summary>
/// <param name="contents">What the site has.</param>
public sealed class SiteQuestions(SiteContents contents)
{
    private static readonly MaterialProperty[] Askable =
    [
        MaterialProperty.Carbon,
        MaterialProperty.Nitrogen,
        MaterialProperty.Moisture,
        MaterialProperty.BulkDensity,
        MaterialProperty.Ash,
        MaterialProperty.Lignin,
    ];

    /// <summary>An entry of <c>have</c> for something at hand, as it is likely to be today.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="daysInStore">Days since it came in.</param>
    public JsonObject Have(StockEntry entry, int daysInStore)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var json = Described(entry.Material, entry.Name, daysInStore);
        json["amount"] = new JsonObject { ["value"] = entry.Amount, ["unit"] = entry.Unit };
        if (StuffAtHand.Of(contents, entry, daysInStore) is { Age.DaysLeft: { } left })
        {
            json["spoils_in_days"] = left;
        }

        return json;
    }

    /// <summary>An ingredient: the material and its amount.</summary>
    /// <param name="key">The material; see <see cref="MaterialKey"/>.</param>
    /// <param name="name">The person's words for it.</param>
    /// <param name="amount">How many of the unit.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="daysInStore">Days since it came in.</param>
    public JsonObject Ingredient(
        string key,
        string name,
        double amount,
        string unit,
        int daysInStore = 0
    )
    {
        var json = Described(key, name, daysInStore);
        json["amount"] = new JsonObject { ["value"] = amount, ["unit"] = unit };
        return json;
    }

    /// <summary>
    /// The material alone: by its id, with what is known otherwise here than in the library, from its age and from
    /// measurements.
    /// </summary>
    /// <param name="key">The material; see <see cref="MaterialKey"/>.</param>
    /// <param name="name">The person's words for it.</param>
    /// <param name="daysInStore">Days since it came in.</param>
    public JsonObject Described(string key, string name, int daysInStore = 0)
    {
        var json = new JsonObject();
        var known = MaterialKey.OwnId(key) is null ? LibraryReader.Library.Find(key) : null;
        if (known is not null)
        {
            json["material"] = key;
        }

        json["name"] = name;
        var now = StuffAtHand.Of(contents, Probe(key, name), daysInStore)?.Material;
        foreach (var property in Askable)
        {
            if (now?.Properties[property] is { } value && value != known?.Properties[property])
            {
                json[PropertyFacts.FieldName(property)] = Json.Plain(value);
            }
        }

        return json;
    }

    /// <summary>The field <c>containers</c>: the sizes of the site's own.</summary>
    public JsonObject Containers()
    {
        var json = new JsonObject();
        foreach (var container in contents.OwnContainers)
        {
            json[container.Name] = new JsonObject
            {
                ["l"] = container.HoldsL,
                ["heaped"] = container.IsHeaped,
            };
        }

        return json;
    }

    /// <summary>The field <c>earlier</c>: what other heaps in the same place taught, the newest first; null for nothing.</summary>
    /// <param name="bayId">The bay; null for none of the site's.</param>
    /// <param name="bin">The bin as the contract has it.</param>
    /// <param name="heapId">The heap it is for, of which nothing is taken; null for a new one.</param>
    public JsonArray? Earlier(Guid? bayId, JsonNode? bin, Guid? heapId)
    {
        JsonNode[] earlier =
        [
            .. contents
                .Lessons.Where(l => l.IsUsed && l.HeapId != heapId && l.IsFor(bayId, bin))
                .OrderByDescending(l => l.MadeAt)
                .Take(KeptLesson.MostUsed)
                .Select(l => l.ToEarlier()),
        ];
        return earlier.Length > 0 ? new JsonArray(earlier) : null;
    }

    /// <summary>The field <c>bin</c> for a bay.</summary>
    /// <param name="bay">The bay.</param>
    public static JsonObject Bin(Bay bay)
    {
        ArgumentNullException.ThrowIfNull(bay);
        var json = new JsonObject { ["shape"] = bay.Shape };
        if (bay.IsRound())
        {
            json["diameter_m"] = bay.DiameterM;
        }
        else
        {
            json["length_m"] = bay.LengthM;
            json["width_m"] = bay.WidthM;
        }

        json["height_m"] = bay.HeightM;
        return json;
    }

    private static StockEntry Probe(string key, string name) =>
        new()
        {
            Id = Guid.Empty,
            Material = key,
            Name = name,
            Amount = 0,
            Unit = "l",
            Since = default,
        };
}

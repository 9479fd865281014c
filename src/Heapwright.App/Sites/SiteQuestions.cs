using System.Text.Json.Nodes;
using Heapwright.App.Contract;
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

    /// <summary>An ingredient or an entry of <c>have</c>: the material and its amount.</summary>
    /// <param name="key">The material; see <see cref="MaterialKey"/>.</param>
    /// <param name="name">The person's words for it.</param>
    /// <param name="amount">How many of the unit.</param>
    /// <param name="unit">The unit.</param>
    public JsonObject Ingredient(string key, string name, double amount, string unit)
    {
        var json = Described(key, name);
        json["amount"] = new JsonObject { ["value"] = amount, ["unit"] = unit };
        return json;
    }

    /// <summary>The material alone.</summary>
    /// <param name="key">The material; see <see cref="MaterialKey"/>.</param>
    /// <param name="name">The person's words for it.</param>
    public JsonObject Described(string key, string name)
    {
        var json = new JsonObject();
        if (MaterialKey.OwnId(key) is null)
        {
            json["material"] = key;
        }

        json["name"] = name;
        if (MaterialKey.OwnId(key) is not null && contents.Material(key) is { } material)
        {
            foreach (var property in Askable)
            {
                if (material.Properties[property] is { } value)
                {
                    json[PropertyFacts.FieldName(property)] = Json.Plain(value);
                }
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
}

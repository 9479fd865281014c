using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Sites;

/// <summary>What a build sheet says of the heap that is built by it.</summary>
public static class SheetHeap
{
    private static readonly string[] InThePlan = ["use", "buy", "water_l"];

    /// <summary>The heap as a question of <c>simulate</c>: what goes in and in what it stands.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="bay">The bay; null for none of the site's.</param>
    public static JsonObject Question(SavedSheet sheet, Bay? bay)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var asked = JsonObject.Create(sheet.Question) ?? [];
        var json = new JsonObject();
        foreach (var name in HeapReader.Fields.Concat(InThePlan).Distinct(StringComparer.Ordinal))
        {
            if (name is not "bin" && asked[name] is { } value)
            {
                json[name] = value.DeepClone();
            }
        }

        if (json["use"] is not null || json["buy"] is not null)
        {
            // What stood in the question itself is a plan for simulate.
            var plan = new JsonObject();
            foreach (var name in InThePlan)
            {
                if (json[name] is { } value)
                {
                    plan[name] = value.DeepClone();
                    json.Remove(name);
                }
            }

            json["plan"] = plan;
        }

        json["bin"] =
            bay is not null ? SiteQuestions.Bin(bay)
            : JsonObject.Create(sheet.Answer)?["bin"] is JsonObject built ? built.DeepClone()
            : asked["bin"]?.DeepClone();
        return json;
    }
}

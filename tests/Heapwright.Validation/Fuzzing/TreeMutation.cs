using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heapwright.Validation.Fuzzing;

/// <summary>One change to a question that keeps it JSON: what was changed, where, and the question afterwards.</summary>
internal sealed record TreeMutation(string What, string Place, string Json)
{
    private static readonly string[] Values =
    [
        "null",
        "true",
        "\"\"",
        "\"   \"",
        "\"3\"",
        "\"NaN\"",
        "\"Infinity\"",
        "[]",
        "{}",
        "[[]]",
        "{\"low\":1}",
        "{\"low\":3,\"typical\":2,\"high\":1}",
        "{\"low\":0,\"typical\":0,\"high\":0}",
        "{\"low\":0,\"typical\":1,\"high\":99999}",
        "{\"low\":-1,\"typical\":1,\"high\":2}",
        "0",
        "-0.0",
        "-1",
        "-1e-300",
        "1e-320",
        "5e-324",
        "1e-9",
        "0.1",
        "99.9999",
        "100",
        "101",
        "1e6",
        "1e9",
        "1e15",
        "1e308",
        "1e400",
        "-1e400",
        "123456789012345678901234567890",
        "0.30000000000000004",
        "\"\\u0000\\u0007\\n\\r\\t\"",
        "\"\\u2028line\\u2029two\\u0085three\\u202Eback\"",
        "\"gr\\u00fcnschnitt \\ud83c\\udf31 \\u8349\"",
        "\"\\ud800\"",
        "\"{0} %s ${x} <b> ' ; --\"",
        "\"../../etc/passwd\"",
        "LONG",
        "MANY",
        "DEEP",
    ];

    private static readonly string[] Names =
    [
        "",
        " ",
        "Ingredients",
        "amout",
        "carbon_pct",
        "__proto__",
        "constructor",
        "\n",
        "\u0000",
        "\u202E",
        "\ud83c\udf31",
        "LONG",
    ];

    /// <summary>A question changed in one place; the same random numbers give the same change.</summary>
    public static TreeMutation Of(string json, Random random)
    {
        var tree = JsonNode.Parse(json)!;
        var places = Places(tree).ToList();
        var (parent, key, place) = places[random.Next(places.Count)];
        var what = random.Next(12);
        return what switch
        {
            0 => Removed(tree, parent, key, place),
            1 => Added(tree, parent, place, random),
            2 => Misspelt(tree, parent, key, place, random),
            3 => Twice(tree, parent, key, place),
            4 => AllNull(tree),
            5 => Swapped(tree, parent, key, place, places, random),
            _ => Replaced(tree, parent, key, place, Values[random.Next(Values.Length)]),
        };
    }

    /// <summary>Every place in a question at which a value stands.</summary>
    public static IEnumerable<(JsonNode Parent, object Key, string Place)> Places(
        JsonNode node,
        string place = ""
    )
    {
        if (node is JsonObject fields)
        {
            foreach (var (name, value) in fields)
            {
                var inner = place.Length == 0 ? name : $"{place}.{name}";
                yield return (node, name, inner);
                foreach (var below in value is null ? [] : Places(value, inner))
                {
                    yield return below;
                }
            }
        }
        else if (node is JsonArray items)
        {
            for (var i = 0; i < items.Count; i++)
            {
                var inner = $"{place}[{i}]";
                yield return (node, i, inner);
                foreach (var below in items[i] is null ? [] : Places(items[i]!, inner))
                {
                    yield return below;
                }
            }
        }
    }

    private static TreeMutation Removed(JsonNode tree, JsonNode parent, object key, string place)
    {
        if (key is string name)
        {
            parent.AsObject().Remove(name);
        }
        else
        {
            parent.AsArray().RemoveAt((int)key);
        }

        return new("removed", place, tree.ToJsonString());
    }

    private static TreeMutation Added(JsonNode tree, JsonNode parent, string place, Random random)
    {
        var name = Names[random.Next(Names.Length)]
            .Replace("LONG", new string('n', 5000), StringComparison.Ordinal);
        if (parent is JsonObject fields)
        {
            fields[name] = 1;
        }
        else
        {
            parent.AsArray().Add((JsonNode)JsonValue.Create(1));
        }

        return new("added", place, tree.ToJsonString());
    }

    private static TreeMutation Misspelt(
        JsonNode tree,
        JsonNode parent,
        object key,
        string place,
        Random random
    )
    {
        if (key is not string { Length: > 2 } name)
        {
            return Replaced(tree, parent, key, place, "1e400");
        }

        var at = random.Next(name.Length - 1);
        var wrong = string.Concat(
            name.AsSpan(0, at),
            name.AsSpan(at + 1, 1),
            name.AsSpan(at, 1),
            name.AsSpan(at + 2)
        );
        var fields = parent.AsObject();
        var value = fields[name]?.DeepClone();
        fields.Remove(name);
        fields[wrong] = value;
        return new("misspelt", place, tree.ToJsonString());
    }

    // A tree cannot hold a field twice, so the text is made by hand.
    private static TreeMutation Twice(JsonNode tree, JsonNode parent, object key, string place)
    {
        if (key is not string name)
        {
            return Replaced(tree, parent, key, place, "{}");
        }

        var value = parent[name]?.ToJsonString() ?? "null";
        parent[name] = "@twice@";
        var field = JsonSerializer.Serialize(name);
        return new(
            "twice",
            place,
            tree.ToJsonString()
                .Replace("\"@twice@\"", $"{value},{field}:{value}", StringComparison.Ordinal)
        );
    }

    private static TreeMutation AllNull(JsonNode tree)
    {
        foreach (var (parent, key, _) in Places(tree).ToList())
        {
            if (key is string name && parent.AsObject()[name] is JsonValue or null)
            {
                parent.AsObject()[(string)key] = null;
            }
        }

        return new("all null", "", tree.ToJsonString());
    }

    private static TreeMutation Swapped(
        JsonNode tree,
        JsonNode parent,
        object key,
        string place,
        List<(JsonNode Parent, object Key, string Place)> places,
        Random random
    )
    {
        var (from, other, _) = places[random.Next(places.Count)];
        var value = (other is string name ? from[name] : from[(int)other])?.DeepClone();
        return Replaced(tree, parent, key, place, value?.ToJsonString() ?? "null");
    }

    private static TreeMutation Replaced(
        JsonNode tree,
        JsonNode parent,
        object key,
        string place,
        string value
    )
    {
        var json = value switch
        {
            "LONG" => $"\"{new string('x', 10_000)}\"",
            "MANY" => $"[{string.Join(',', Enumerable.Repeat("{}", 500))}]",
            "DEEP" => new string('[', 60) + new string(']', 60),
            _ => value,
        };
        // Numbers too large and halves of letters cannot stand in a tree, so they are put into the text.
        if (key is string name)
        {
            parent[name] = "@here@";
        }
        else
        {
            parent[(int)key] = "@here@";
        }

        return new(
            value.Length > 40 ? value[..40] : value,
            place,
            tree.ToJsonString().Replace("\"@here@\"", json, StringComparison.Ordinal)
        );
    }
}

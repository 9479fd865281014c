using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.Core.Amounts;

namespace Heapwright.App.Contract;

/// <summary>Reads the containers and units of a question.</summary>
internal static class ContainerReader
{
    /// <summary>The asker's containers before the usual ones.</summary>
    /// <param name="input">The field <c>containers</c>, or null.</param>
    public static ContainerSet Read(Input? input)
    {
        var set = UsualContainers.Set;
        if (input is not { } given)
        {
            return set;
        }

        foreach (var (name, value) in given.Named(50))
        {
            if (name.Length is 0 or > 40 || name.Any(char.IsControl))
            {
                throw value.Problem("a container's name has 1 to 40 letters");
            }

            if (MeasureUnits.Find(name) is not null)
            {
                throw value.Problem(
                    $"\"{name}\" is a unit of mass or volume and cannot be a container"
                );
            }

            // The size is what one holds as it is filled, heap included: "heaped" is kept for the words only.
            var fields = value.IsObject ? value.Fields("l", "kg", "heaped", "assumed") : null;
            fields?["heaped"]?.YesNo();

            // An answer of ours fed back in says which sizes it assumed; they stay assumptions.
            var assumed = fields?["assumed"]?.YesNo() ?? false;
            if (fields is null)
            {
                set = set.With(
                    UnitSize.OfVolume(name, value.Spread(0.01, 100_000), wholeByDefault: true)
                );
            }
            else if (fields["kg"] is { } kg)
            {
                if (fields["l"] is not null)
                {
                    throw value.Problem(
                        "\"l\" and \"kg\" were both given; one of the two is allowed"
                    );
                }

                set = set.With(
                    UnitSize.OfMass(name, kg.Spread(0.01, 100_000), wholeByDefault: true) with
                    {
                        IsAssumed = assumed,
                    }
                );
            }
            else
            {
                set = set.With(
                    UnitSize.OfVolume(
                        name,
                        fields.Needed("l").Spread(0.01, 100_000),
                        wholeByDefault: true
                    ) with
                    {
                        IsAssumed = assumed,
                    }
                );
            }
        }

        return set;
    }

    /// <summary>A unit by name.</summary>
    /// <param name="input">The name.</param>
    /// <param name="containers">The containers of the question.</param>
    public static UnitSize Unit(Input input, ContainerSet containers)
    {
        var name = input.Text(40);
        if (containers.Find(name) is { } size)
        {
            return size;
        }

        string[] known = [.. MeasureUnits.Names, .. containers.Names];
        throw input.Problem(
            $"\"{name}\" has no size; give it one, such as \"containers\": {{\"{name}\": {{\"l\": 200}}}}, or use {string.Join(", ", known)} (the nearest is \"{Nearest.Of(name, known)}\")"
        );
    }

    /// <summary>The sizes that were used, for the answer.</summary>
    /// <param name="units">The units of the question.</param>
    public static JsonObject Sizes(IEnumerable<UnitSize> units)
    {
        var sizes = new JsonObject();
        foreach (var unit in units.DistinctBy(u => u.Unit).Where(u => u.WholeByDefault))
        {
            sizes[unit.Unit] = new JsonObject
            {
                [unit.IsMass ? "kg" : "l"] = Json.Plain(unit.Size),
                ["assumed"] = unit.IsAssumed,
            };
        }

        return sizes;
    }
}

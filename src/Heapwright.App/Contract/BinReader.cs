using System.Text.Json.Nodes;
using Heapwright.Core.Bins;
using UnitsNet;

namespace Heapwright.App.Contract;

/// <summary>Reads what holds the heap.</summary>
internal static class BinReader
{
    /// <summary>A bin: <c>shape</c> and its sizes in metres; a box unless told.</summary>
    /// <param name="input">The object.</param>
    /// <exception cref="InputProblem">A size is missing, out of range or does not belong to the shape.</exception>
    public static Bin Read(Input input)
    {
        var fields = input.Fields("shape", "length_m", "width_m", "height_m", "diameter_m");
        var shape = fields["shape"]?.Choice("box", "windrow", "cone", "ring") ?? "box";
        var round = shape is "cone" or "ring";
        foreach (var stranger in round ? ["length_m", "width_m"] : new[] { "diameter_m" })
        {
            if (fields[stranger] is { } value)
            {
                throw value.Problem(
                    $"a {shape} has no {stranger}; it has {(round ? "diameter_m" : "length_m, width_m")} and height_m"
                );
            }
        }

        Length Side(string name) => Length.FromMeters(fields.Needed(name).Number(0.1, 100));
        var height = Length.FromMeters(fields.Needed("height_m").Number(0.1, 10));
        return shape switch
        {
            "box" => Bin.Box(Side("length_m"), Side("width_m"), height),
            "windrow" => Bin.Windrow(Side("length_m"), Side("width_m"), height),
            "ring" => Bin.Ring(Side("diameter_m"), height),
            _ => Bin.Cone(Side("diameter_m"), height),
        };
    }

    /// <summary>A bin as it stands in questions and answers.</summary>
    /// <param name="bin">The bin.</param>
    public static JsonObject ToJson(Bin bin)
    {
        var json = new JsonObject { ["shape"] = Word(bin.Shape) };
        if (bin.Shape is BinShape.Ring or BinShape.Cone)
        {
            json["diameter_m"] = bin.Length.Meters;
        }
        else
        {
            json["length_m"] = bin.Length.Meters;
            json["width_m"] = bin.Width.Meters;
        }

        json["height_m"] = bin.Height.Meters;
        return json;
    }

    /// <summary>The word for a shape.</summary>
    /// <param name="shape">The shape.</param>
    public static string Word(BinShape shape) =>
        shape switch
        {
            BinShape.Box => "box",
            BinShape.Windrow => "windrow",
            BinShape.Ring => "ring",
            _ => "cone",
        };
}

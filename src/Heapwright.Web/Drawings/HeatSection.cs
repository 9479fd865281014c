using System.Text;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Drawings;

/// <summary>Where things lie in the picture of the inside of a heap, to scale, and its lines as paths.</summary>
/// <param name="view">The heap.</param>
/// <param name="binMetres">The height of the walls; 0 for none.</param>
public sealed class HeatSection(HeapView view, double binMetres)
{
    private const double Room = 212;
    private const double Broad = 258;
    private const double Top = 40; // for steam and a cover above the heap

    /// <summary>The middle.</summary>
    public const double Middle = 200;

    /// <summary>Units of the picture for a metre.</summary>
    public double Scale { get; } =
        Math.Min(Broad / view.Width, Room / Math.Max(Math.Max(binMetres, view.BuiltHeight), 0.1));

    /// <summary>The ground.</summary>
    public double Floor => Top + (Math.Max(binMetres, view.BuiltHeight) * Scale);

    /// <summary>Half the width of the heap in the picture.</summary>
    public double Half => view.Width * Scale / 2;

    /// <summary>A height above the ground in the picture.</summary>
    /// <param name="metres">Metres.</param>
    public double Y(double metres) => Floor - (metres * Scale);

    /// <summary>A place of the heap in the picture.</summary>
    /// <param name="across">From −1 to 1.</param>
    /// <param name="up">From 0 on the ground to 1 on top.</param>
    /// <param name="metres">How high the heap stands in the middle.</param>
    public (double X, double Y) Place(double across, double up, double metres) =>
        (Middle + (across * Half), Y(up * metres * Profile(across)));

    /// <summary>The outline of the heap.</summary>
    /// <param name="metres">How high it stands in the middle.</param>
    public string Outline(double metres) => Polyline.Path(Ring(metres), closed: true);

    /// <summary>The top of the heap from side to side, a little above it.</summary>
    /// <param name="metres">How high it stands in the middle.</param>
    /// <param name="above">How far above.</param>
    public string Over(double metres, double above)
    {
        var line = new List<(double X, double Y)>();
        for (var i = -20; i <= 20; i++)
        {
            var (x, y) = Place(i / 20.0, 1, metres);
            line.Add((x, y - above));
        }

        return Polyline.Path(Polyline.Simple(line), closed: false);
    }

    /// <summary>The edges of all that is as warm as a level or warmer.</summary>
    /// <param name="field">The field.</param>
    /// <param name="level">°C.</param>
    /// <param name="metres">How high the heap stands.</param>
    public string Around(HeatField field, double level, double metres)
    {
        ArgumentNullException.ThrowIfNull(field);
        var path = new StringBuilder();
        foreach (var loop in field.Around(level))
        {
            var points = loop.Select(p => Place(p.Across, p.Up, metres)).ToList();
            path.Append(Polyline.Path(Polyline.Simple(points), closed: true));
        }

        return path.ToString();
    }

    private List<(double X, double Y)> Ring(double metres)
    {
        var line = new List<(double X, double Y)>();
        for (var i = -20; i <= 20; i++)
        {
            line.Add(Place(i / 20.0, 1, metres));
        }

        line = [.. Polyline.Simple(line)];
        line.Add((Middle + Half, Floor));
        line.Add((Middle - Half, Floor));
        return line;
    }

    // As the shapes of bins are reckoned: a box and a ring level, a cone straight, a windrow a parabola.
    private double Profile(double across) =>
        view.Shape switch
        {
            "cone" => 1 - Math.Abs(across),
            "windrow" => 1 - (across * across),
            _ => 1,
        };
}

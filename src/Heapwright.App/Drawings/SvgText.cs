using System.Globalization;
using System.Security;
using System.Text;

namespace Heapwright.App.Drawings;

/// <summary>Writes SVG: every text escaped, every number with a point, no styles and no scripts.</summary>
internal sealed class SvgText
{
    private readonly StringBuilder text = new();

    public SvgText Open(string element, params ReadOnlySpan<(string Name, object Value)> attributes)
    {
        Start(element, attributes);
        text.Append('>');
        return this;
    }

    public SvgText Empty(
        string element,
        params ReadOnlySpan<(string Name, object Value)> attributes
    )
    {
        Start(element, attributes);
        text.Append("/>");
        return this;
    }

    public SvgText Close(string element)
    {
        text.Append("</").Append(element).Append('>');
        return this;
    }

    public SvgText Words(string words)
    {
        text.Append(Escape(words));
        return this;
    }

    public SvgText Break()
    {
        text.Append('\n');
        return this;
    }

    public static string Number(double value) =>
        Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    public static string Path(ReadOnlySpan<double> points, bool closed)
    {
        var path = new StringBuilder();
        for (var i = 0; i + 1 < points.Length; i += 2)
        {
            path.Append(i == 0 ? 'M' : 'L')
                .Append(Number(points[i]))
                .Append(' ')
                .Append(Number(points[i + 1]));
        }

        return closed ? path.Append('Z').ToString() : path.ToString();
    }

    public override string ToString() => text.ToString();

    private void Start(string element, ReadOnlySpan<(string Name, object Value)> attributes)
    {
        text.Append('<').Append(element);
        foreach (var (name, value) in attributes)
        {
            var word = value is double number
                ? Number(number)
                : Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
            text.Append(' ').Append(name).Append("=\"").Append(Escape(word)).Append('"');
        }
    }

    // Characters that XML cannot hold at all are dropped.
    private static string Escape(string words)
    {
        var clean = new StringBuilder(words.Length);
        for (var i = 0; i < words.Length; i++)
        {
            var c = words[i];
            if (
                char.IsHighSurrogate(c)
                && i + 1 < words.Length
                && char.IsLowSurrogate(words[i + 1])
            )
            {
                clean.Append(c).Append(words[++i]);
            }
            else if (
                (!char.IsControl(c) || c is '\t' or '\n')
                && !char.IsSurrogate(c)
                && c is not ('\ufffe' or '\uffff')
            )
            {
                clean.Append(c);
            }
        }

        return SecurityElement.Escape(clean.ToString());
    }
}

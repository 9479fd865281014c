using Heapwright.App.Texts;
using Heapwright.Core.Materials;

namespace Heapwright.Web.Showing;

/// <summary>The words for the properties of materials.</summary>
public static class PropertyNames
{
    /// <summary>The end of the code under which the name of a property stands.</summary>
    /// <param name="property">The property.</param>
    public static string Code(MaterialProperty property)
    {
        var field = PropertyFacts.FieldName(property);
        foreach (var end in new[] { "_pct_db", "_pct_wb", "_kg_m3", "_pct" })
        {
            if (field.EndsWith(end, StringComparison.Ordinal))
            {
                return field[..^end.Length];
            }
        }

        return field;
    }

    /// <summary>The name of a property beside a field in which it is typed: a laboratory reports in metric units.</summary>
    /// <param name="property">The property.</param>
    public static string Typed(MaterialProperty property) =>
        Words.Of("materials.value_" + Code(property), null, Measures.Metric.DensityUnit);
}

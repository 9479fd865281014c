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
}

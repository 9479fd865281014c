using System.Globalization;
using System.Reflection;
using System.Resources;

namespace Heapwright.App.Texts;

/// <summary>
/// The sentences of one assembly by code. The part of a code before the first dot names the resource file: the code
/// <c>mixtures.too_wet</c> stands in Texts/Mixtures.resx under <c>too_wet</c>. Other languages stand beside it
/// (Texts/Mixtures.de.resx); what has no sentence there is said in English.
/// </summary>
/// <param name="assembly">The assembly.</param>
/// <param name="prefix">The namespace of its resource files, such as <c>Heapwright.App.Texts</c>.</param>
public sealed class SentenceFiles(Assembly assembly, string prefix)
{
    private readonly Dictionary<string, ResourceManager> files = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>The sentence for a code in the language that is being read, or null where there is none.</summary>
    /// <param name="code">A code such as <c>mixtures.too_wet</c>.</param>
    /// <param name="culture">The number format; it has no say in the language.</param>
    /// <param name="values">The values for the places {0}, {1}, ….</param>
    public string? TryOf(string code, CultureInfo culture, params object[] values)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(values);
        var dot = code.IndexOf('.', StringComparison.Ordinal);
        if (dot < 1)
        {
            return null;
        }

        var name = string.Concat(code[..1].ToUpperInvariant(), code.AsSpan(1, dot - 1));
        string? sentence;
        try
        {
            sentence = File(name).GetString(code[(dot + 1)..], Languages.Now);
        }
        catch (MissingManifestResourceException)
        {
            return null;
        }

        return sentence is null || values.Length == 0
            ? sentence
            : string.Format(culture, sentence, values);
    }

    private ResourceManager File(string name)
    {
        lock (gate)
        {
            if (!files.TryGetValue(name, out var file))
            {
                file = new ResourceManager(prefix + "." + name, assembly);
                files[name] = file;
            }

            return file;
        }
    }
}

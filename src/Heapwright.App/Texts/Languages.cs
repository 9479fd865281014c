using System.Globalization;

namespace Heapwright.App.Texts;

/// <summary>
/// The languages there are sentences in, and which of them is being read: the one of the current UI culture, English for
/// every other. Nothing else looks at the UI culture. How numbers are written is asked apart from it.
/// </summary>
public static class Languages
{
    /// <summary>The codes of the languages; the first is that of the sentences themselves.</summary>
    public static IReadOnlyList<string> All { get; } = ["en", "de"];

    /// <summary>The code of the language that is being read.</summary>
    public static string Code =>
        CultureInfo.CurrentUICulture.TwoLetterISOLanguageName == "de" ? "de" : "en";

    /// <summary>
    /// The culture of the language that is being read: its names of months, and its numbers where the reader's own format
    /// is not known. English is the invariant one, with a point.
    /// </summary>
    public static CultureInfo Now =>
        Code == "de" ? CultureInfo.GetCultureInfo("de") : CultureInfo.InvariantCulture;

    /// <summary>The name of a language in the language itself.</summary>
    /// <param name="code">Its code.</param>
    public static string Name(string code) => code == "de" ? "Deutsch" : "English";

    /// <summary>
    /// Has everything that runs in this process without a reader of its own in English, whatever the machine is set to.
    /// </summary>
    public static void StartInEnglish()
    {
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
    }

    /// <summary>Says what follows in a language, until the answer is disposed of: for work that is for one person.</summary>
    /// <param name="code">Its code.</param>
    public static IDisposable Use(string code)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture =
            code == "de" ? CultureInfo.GetCultureInfo("de") : CultureInfo.InvariantCulture;
        return new Spoken(before);
    }

    /// <summary>
    /// The end of the code of a sentence that is for one of something or for several. One is anything above none and up to
    /// one ("half a barrow", "eine halbe Schubkarre"); none and more than one are several. This is right for English and
    /// German; a language with more forms would need more ends.
    /// </summary>
    /// <param name="count">How many.</param>
    public static string End(double count) => IsOne(count) ? "_one" : "_many";

    /// <summary>Whether a thing is named as one of it.</summary>
    /// <param name="count">How many.</param>
    public static bool IsOne(double count) => count is > 0 and <= 1;

    private sealed class Spoken(CultureInfo before) : IDisposable
    {
        public void Dispose() => CultureInfo.CurrentUICulture = before;
    }
}

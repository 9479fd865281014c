using System.Globalization;
using System.Text.RegularExpressions;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using NodaTime;
using NodaTime.Text;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>What the commands of the diary have in common: the folder, the heap that is meant, times and quantities as they are typed.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed partial class Stored(Func<string, DiaryDesk> open)
{
    private const string Folder = "HEAPWRIGHT_DATA";

    private static readonly string[] Clocks =
    [
        "uuuu-MM-dd'T'HH:mm:ss",
        "uuuu-MM-dd'T'HH:mm",
        "uuuu-MM-dd HH:mm:ss",
        "uuuu-MM-dd HH:mm",
    ];

    /// <summary>What is stored in the folder that the environment names, or in the usual one.</summary>
    /// <param name="call">The call.</param>
    /// <exception cref="InputProblem">The folder cannot be used.</exception>
    public DiaryDesk Open(Call call) => OpenFolder(call, open);

    /// <summary>Opens something in the folder that the environment names, or in the usual one.</summary>
    /// <typeparam name="T">What is opened.</typeparam>
    /// <param name="call">The call.</param>
    /// <param name="open">Opens it.</param>
    /// <exception cref="InputProblem">The folder cannot be used.</exception>
    public static T OpenFolder<T>(Call call, Func<string, T> open)
    {
        var folder = call.Variable(Folder) is { Length: > 0 } named
            ? named
            : Path.Combine(
                Environment.GetFolderPath(
                    Environment.SpecialFolder.LocalApplicationData,
                    Environment.SpecialFolderOption.DoNotVerify
                ),
                "heapwright"
            );
        try
        {
            return open(Path.GetFullPath(folder));
        }
        catch (Exception problem)
            when (problem is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw Wrong("cli.no_site", folder, problem.Message);
        }
    }

    /// <summary>The heap of a word.</summary>
    /// <param name="desk">What is stored.</param>
    /// <param name="word">Its name, its id or the beginning of it.</param>
    /// <exception cref="InputProblem">None is meant, or several.</exception>
    public static KeptHeap Heap(DiaryDesk desk, string word)
    {
        var heaps = Await(desk.Reader.Named(word, CancellationToken.None));
        return heaps.Length switch
        {
            1 => heaps[0],
            0 => throw Wrong("diary.no_heap", word),
            _ => throw Wrong(
                "diary.many_heaps",
                word,
                heaps.Length,
                string.Join(", ", heaps.Select(h => h.Id))
            ),
        };
    }

    /// <summary>A moment: with an offset, or by the clock of the zone.</summary>
    /// <param name="call">The call.</param>
    /// <param name="option">The option.</param>
    /// <param name="zone">The zone.</param>
    /// <returns>Null if the option was not given.</returns>
    /// <exception cref="InputProblem">It is no time.</exception>
    public static DateTimeOffset? Time(Call call, string option, DateTimeZone zone)
    {
        if (call.Value(option) is not { } text)
        {
            return null;
        }

        if (
            DateTimeOffset.TryParseExact(
                text,
                ["yyyy-MM-dd'T'HH:mmK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"],
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var moment
            ) && Zoned().IsMatch(text)
        )
        {
            return moment;
        }

        foreach (var clock in Clocks)
        {
            if (
                LocalDateTimePattern.CreateWithInvariantCulture(clock).Parse(text) is
                { Success: true } local
            )
            {
                return local.Value.InZoneLeniently(zone).ToDateTimeOffset();
            }
        }

        // A day without a time counts as midday.
        return LocalDatePattern.Iso.Parse(text) is { Success: true } day
            ? day.Value.At(new LocalTime(12, 0)).InZoneLeniently(zone).ToDateTimeOffset()
            : throw Wrong("diary.time", option, text);
    }

    /// <summary>A number with its unit, such as <c>58C</c>.</summary>
    /// <param name="call">The call.</param>
    /// <param name="option">The option.</param>
    /// <param name="example">How it is written.</param>
    /// <param name="units">The units that are understood.</param>
    /// <returns>Null if the option was not given.</returns>
    /// <exception cref="InputProblem">It is no number with one of these units.</exception>
    public static (double Value, string Unit)? Quantity(
        Call call,
        string option,
        string example,
        params ReadOnlySpan<string> units
    )
    {
        if (call.Value(option) is not { } text)
        {
            return null;
        }

        var match = NumberWithUnit().Match(text);
        var unit = match.Groups["u"].Value.ToLowerInvariant();
        return
            match.Success
            && units.Contains(unit)
            && double.TryParse(
                match.Groups["n"].Value,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var value
            )
            ? (value, unit)
            : throw Wrong("diary.quantity", option, text, example);
    }

    /// <summary>The id that was given, or a new one.</summary>
    /// <param name="call">The call.</param>
    /// <param name="option">The option.</param>
    /// <exception cref="InputProblem">It is no id.</exception>
    public static Guid Id(Call call, string option = "--id")
    {
        if (call.Value(option) is not { } text)
        {
            return Guid.CreateVersion7();
        }

        return Guid.TryParse(text, CultureInfo.InvariantCulture, out var id) && id != Guid.Empty
            ? id
            : throw Wrong("diary.id", option, text);
    }

    /// <summary>One of a few words; the first unless told.</summary>
    /// <param name="call">The call.</param>
    /// <param name="option">The option.</param>
    /// <param name="words">The words.</param>
    /// <param name="usual">The word where none was given.</param>
    /// <exception cref="InputProblem">It is another word.</exception>
    public static string Word(Call call, string option, IReadOnlyList<string> words, string usual)
    {
        var word = call.Value(option) ?? usual;
        return words.Contains(word, StringComparer.Ordinal)
            ? word
            : throw Wrong("diary.choice", option, word, string.Join(", ", words));
    }

    /// <summary>A fault of what was typed, in one sentence.</summary>
    /// <param name="code">The code of the sentence.</param>
    /// <param name="values">The values in it.</param>
    public static InputProblem Wrong(string code, params object[] values) =>
        new("heapwright", "", Words.Of(code, null, values));

    /// <summary>Waits for what is done elsewhere; a command has nothing else to do.</summary>
    /// <typeparam name="T">What comes of it.</typeparam>
    /// <param name="work">The work.</param>
    public static T Await<T>(Task<T> work) => work.GetAwaiter().GetResult();

    [GeneratedRegex(
        @"^(?<n>[-+]?[0-9]+(\.[0-9]+)?)\s*°?(?<u>[A-Za-z]*)$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex NumberWithUnit();

    [GeneratedRegex(
        @"(Z|[+-][0-9]{2}:[0-9]{2})$",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Zoned();
}

using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>Entries in words.</summary>
public static class EntryText
{
    /// <summary>What an entry says, in one line.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Of(DiaryEntry entry, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(measures);
        return entry switch
        {
            TemperatureEntry reading => string.Join(", ", Reading(reading, measures)),
            SignEntry sign => string.Join("; ", Signs(sign)),
            EventEntry happening => Deed(happening.Deed, measures),
            NoteEntry note => Words.Of("diary.note", null, note.Text),
            PhotoEntry { Caption.Length: > 0 } photo => Words.Of(
                "diary.photo_caption",
                null,
                photo.Caption
            ),
            PhotoEntry => Words.Of("diary.photo"),
            _ => Words.Of("diary.correction"),
        };
    }

    /// <summary>What is thought of a reading, in words; empty where nothing speaks against it.</summary>
    /// <param name="verdict">The verdict; null for what is no reading.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Of(PlausibilityVerdict? verdict, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(measures);
        return verdict is null or { Status: PlausibilityStatus.Plausible }
            ? ""
            : Words.Of(
                "diary." + EntryWords.Of(verdict.Status),
                null,
                string.Join(' ', verdict.Reasons.Select(measures.Say))
            );
    }

    /// <summary>The word of an entry as people say it.</summary>
    /// <param name="word">The word as it stands in JSON.</param>
    public static string Word(string word) => Words.Of("diary.word_" + word);

    private static IEnumerable<string> Reading(TemperatureEntry reading, Measures measures)
    {
        yield return measures.Temperature(reading.Temperature);
        yield return Word(EntryWords.Of(reading.Spot));
        if (reading.Depth is { } depth)
        {
            yield return Words.Of("diary.depth", null, measures.Short(depth));
        }

        if (reading.Air is { } air)
        {
            yield return Words.Of("diary.air", null, measures.Temperature(air));
        }

        if (reading.Instrument.Length > 0)
        {
            yield return Words.Of("diary.with", null, reading.Instrument);
        }
    }

    private static IEnumerable<string> Signs(SignEntry sign)
    {
        if (sign.Squeeze.Count > 0)
        {
            yield return Places(
                "squeeze",
                sign.Squeeze.Select(s => (s.Place, EntryWords.Of(s.Word)))
            );
        }

        if (sign.Feel.Count > 0)
        {
            yield return Places("feel", sign.Feel);
        }

        foreach (
            var (code, words) in new[]
            {
                ("smell", sign.Smell),
                ("see", sign.See),
                ("visitors", sign.Visitors),
            }
        )
        {
            if (words.Count > 0)
            {
                yield return Words.Of("diary." + code, null, string.Join(", ", words.Select(Word)));
            }
        }
    }

    private static string Places(string code, IEnumerable<(SignPlace Place, string Word)> words) =>
        Words.Of(
            "diary." + code,
            null,
            string.Join(
                ", ",
                words.Select(w =>
                    Words.Of("diary.at_place", null, Word(EntryWords.Of(w.Place)), Word(w.Word))
                )
            )
        );

    private static string Stuff(AddedStuff stuff, Measures measures) =>
        Words.Of(
            "diary.stuff",
            null,
            UnitWords.Amount(stuff.Value, UnitWords.Named(stuff.Unit), measures.Culture),
            stuff.Name
        ) + Origin(stuff.Giver, stuff.Since);

    /// <summary>Where a load came from, in brackets; empty where that is not known.</summary>
    /// <param name="giver">Who gave it; may be empty.</param>
    /// <param name="since">The day it was cut, fetched or brought.</param>
    public static string Origin(string giver, DateOnly? since)
    {
        var day = since is { } known ? Words.Day(LocalDate.FromDateOnly(known)) : null;
        return (giver, day) switch
        {
            ({ Length: > 0 }, not null) => Words.Of("diary.origin_both", null, giver, day),
            ({ Length: > 0 }, null) => Words.Of("diary.origin_giver", null, giver),
            (_, not null) => Words.Of("diary.origin_day", null, day),
            _ => "",
        };
    }

    private static string Test(TestedDeed tested, Measures measures)
    {
        var name = Words.Of("diary.test_" + EntryWords.Of(tested.Test));
        return tested.IsBegun
            ? Words.Of("diary.test_begun", null, name)
            : Words.Of(
                "diary.test_read",
                null,
                name,
                string.Join(", ", tested.Values.Select(v => HomeTests.Text(v, measures)))
            );
    }

    private static string Deed(HeapDeed deed, Measures measures)
    {
        var code = "diary.do_" + EntryWords.Of(deed);
        return deed switch
        {
            TurnedDeed turned => Words.Of(
                code,
                null,
                Word(EntryWords.Of(turned.Part)),
                Word(EntryWords.Of(turned.Thoroughness))
            ),
            WateredDeed watered => Words.Of(code, null, measures.LitresAsGiven(watered.Litres)),
            BuiltDeed { Loads.Count: > 0 } built => Words.Of(
                "diary.built_of",
                null,
                string.Join(", ", built.Loads.Select(l => Stuff(l, measures)))
            ),
            AddedDeed added => Words.Of(
                code,
                null,
                string.Join(", ", added.Ingredients.Select(i => Stuff(i, measures)))
            ),
            CoveredDeed covered => Words.Of(code, null, Word(covered.Kind)),
            RainedDeed rained => Words.Of(
                code,
                null,
                rained.Millimetres.ToString("0.#", measures.Culture)
            ),
            SpreadDeed spread => Words.Of(
                code,
                null,
                measures.LitresAsGiven(spread.Litres),
                spread.Bed
            ),
            TestedDeed tested => Test(tested, measures),
            SplitDeed split => Words.Of(
                code,
                null,
                split.SharePct.ToString("0.#", measures.Culture)
            ),
            _ => Words.Of(code),
        };
    }
}

using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Heapwright.App.Contract;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.App.Diary;

/// <summary>
/// Entries as JSON, in one form only: the same entry gives the same bytes, fields in this order, no blanks, numbers in
/// the shortest form that reads back. What is chained, exported and compared is this text.
/// </summary>
public static class EntryJson
{
    /// <summary>How a day stands in entries.</summary>
    internal const string DateForm = "yyyy-MM-dd";

    private const string TimeForm = "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz";

    private const string Way = "\"way\":\"";

    private static readonly JsonWriterOptions Plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The whole record of an entry: what was said, when and how it came, and the verdict.</summary>
    /// <param name="judged">The entry.</param>
    public static string Record(JudgedEntry judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        return Text(json =>
        {
            var entry = judged.Entry;
            json.WriteNumber("schema", Json.Schema);
            json.WriteString("id", entry.Id);
            json.WriteString("heap_id", entry.HeapId);
            json.WriteString("received_at", Time(entry.ReceivedAt));
            Filled(json, "by", entry.By);
            json.WriteString("way", EntryWords.Of(entry.Way));
            Said(json, entry);
            if (judged.Verdict is { } verdict)
            {
                json.WritePropertyName("verdict");
                Write(json, verdict);
            }
        });
    }

    /// <summary>What an entry says, without how it came: the object that can be sent again.</summary>
    /// <param name="entry">The entry.</param>
    public static string Said(DiaryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Text(json =>
        {
            json.WriteString("id", entry.Id);
            Said(json, entry);
        });
    }

    /// <summary>Whether a record says just this, told by its text alone; where this is false, the entries may still say the same.</summary>
    /// <param name="record">What <see cref="Record"/> wrote.</param>
    /// <param name="entry">The entry.</param>
    public static bool SaysJustThis(string record, DiaryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(entry);
        var said = Said(entry).AsSpan();
        said = said[said.IndexOf(',')..^1];
        var way = record.IndexOf(Way, StringComparison.Ordinal);
        var rest = way < 0 ? default : record.AsSpan(way + Way.Length);
        rest = rest.IsEmpty ? rest : rest[(rest.IndexOf('"') + 1)..];
        return !rest.IsEmpty
            && rest.StartsWith(said, StringComparison.Ordinal)
            && rest[said.Length..] is { Length: > 0 } end
            && (end is "}" || end.StartsWith(",\"verdict\":", StringComparison.Ordinal));
    }

    /// <summary>A time as it stands in entries.</summary>
    /// <param name="time">The time.</param>
    public static string Time(DateTimeOffset time) =>
        time.ToString(TimeForm, CultureInfo.InvariantCulture);

    /// <summary>A day as it stands in entries; null where it is not known.</summary>
    /// <param name="day">The day.</param>
    public static string? Date(DateOnly? day) =>
        day?.ToString(DateForm, CultureInfo.InvariantCulture);

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var buffer = new MemoryStream(256);
        using (var json = new Utf8JsonWriter(buffer, Plain))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.GetBuffer(), 0, (int)buffer.Length);
    }

    private static void Said(Utf8JsonWriter json, DiaryEntry entry)
    {
        json.WriteString("at", Time(entry.At));
        if (entry.AtIsArrival)
        {
            json.WriteBoolean("at_is_arrival", true);
        }

        Filled(json, "zone", entry.Zone);
        json.WriteString("entry", EntryWords.Kind(entry));
        switch (entry)
        {
            case TemperatureEntry reading:
                Reading(json, reading);
                break;
            case SignEntry sign:
                Sign(json, sign);
                break;
            case EventEntry happening:
                json.WriteString("do", EntryWords.Of(happening.Deed));
                Deed(json, happening.Deed);
                break;
            case NoteEntry note:
                json.WriteString("text", note.Text);
                break;
            case PhotoEntry photo:
                json.WriteString("content_sha256", photo.ContentHash);
                Filled(json, "caption", photo.Caption);
                break;
            case CorrectionEntry correction:
                Correction(json, correction);
                break;
        }
    }

    private static void Reading(Utf8JsonWriter json, TemperatureEntry reading)
    {
        json.WriteNumber("temperature_c", reading.Temperature.DegreesCelsius);
        if (reading.GivenInFahrenheit)
        {
            json.WriteString("given_in", "f");
        }

        json.WriteString("spot", EntryWords.Of(reading.Spot));
        if (reading.Depth is { } depth)
        {
            json.WriteNumber("depth_cm", depth.Centimeters);
        }

        if (reading.Air is { } air)
        {
            json.WriteNumber("air_c", air.DegreesCelsius);
        }

        Filled(json, "instrument", reading.Instrument);
    }

    private static void Sign(Utf8JsonWriter json, SignEntry sign)
    {
        Places(json, "squeeze", sign.Squeeze.Select(s => (s.Place, EntryWords.Of(s.Word))));
        Places(json, "feel", sign.Feel);
        Words(json, "smell", sign.Smell);
        Words(json, "see", sign.See);
        Words(json, "visitors", sign.Visitors);
    }

    private static void Deed(Utf8JsonWriter json, HeapDeed deed)
    {
        switch (deed)
        {
            case TurnedDeed turned:
                json.WriteString("thoroughness", EntryWords.Of(turned.Thoroughness));
                json.WriteString("part", EntryWords.Of(turned.Part));
                break;
            case WateredDeed watered:
                json.WriteNumber("l", watered.Litres);
                break;
            case BuiltDeed { Loads.Count: > 0 } built:
                Stuff(json, built.Loads);
                break;
            case AddedDeed added:
                Stuff(json, added.Ingredients);
                break;
            case CoveredDeed covered:
                json.WriteString("kind", covered.Kind);
                break;
            case RainedDeed rained:
                json.WriteNumber("mm", rained.Millimetres);
                break;
            case SplitDeed split:
                json.WriteNumber("share_pct", split.SharePct);
                Id(json, "other_heap", split.OtherHeap);
                break;
            case MergedDeed merged:
                Id(json, "other_heap", merged.OtherHeap);
                break;
            case SpreadDeed spread:
                json.WriteString("bed", spread.Bed);
                json.WriteNumber("l", spread.Litres);
                break;
            case MovedDeed moved:
                json.WriteString("bay", moved.Bay);
                break;
            case TestedDeed tested:
                Tested(json, tested);
                break;
        }
    }

    private static void Tested(Utf8JsonWriter json, TestedDeed tested)
    {
        json.WriteString("test", EntryWords.Of(tested.Test));
        if (!tested.IsBegun)
        {
            json.WriteStartObject("values");
            foreach (var (field, value) in tested.Values)
            {
                json.WriteNumber(field, value);
            }

            json.WriteEndObject();
        }
    }

    private static void Stuff(Utf8JsonWriter json, IReadOnlyList<AddedStuff> all)
    {
        json.WriteStartArray("ingredients");
        foreach (var stuff in all)
        {
            json.WriteStartObject();
            Filled(json, "material", stuff.Material);
            json.WriteString("name", stuff.Name);
            json.WriteStartObject("amount");
            json.WriteNumber("value", stuff.Value);
            json.WriteString("unit", stuff.Unit);
            json.WriteEndObject();
            Filled(json, "giver", stuff.Giver);
            Filled(json, "since", Date(stuff.Since) ?? "");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Correction(Utf8JsonWriter json, CorrectionEntry correction)
    {
        json.WriteString("corrects", correction.Corrects);
        Filled(json, "reason", correction.Reason);
        if (correction.Replacement is { } replacement)
        {
            json.WriteStartObject("replacement");
            Said(json, replacement);
            json.WriteEndObject();
        }
        else
        {
            json.WriteBoolean("strike_out", true);
        }
    }

    private static void Write(Utf8JsonWriter json, PlausibilityVerdict verdict)
    {
        json.WriteStartObject();
        json.WriteString("status", EntryWords.Of(verdict.Status));
        if (verdict.Reasons.Count > 0)
        {
            json.WriteStartArray("reasons");
            foreach (var reason in verdict.Reasons)
            {
                Write(json, reason);
            }

            json.WriteEndArray();
        }

        if (verdict.Suggested is { } suggested)
        {
            json.WriteNumber("suggested_c", suggested.DegreesCelsius);
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Reason reason)
    {
        json.WriteStartObject();
        json.WriteString("code", reason.Code);
        json.WriteStartArray("values");
        foreach (var value in reason.Values)
        {
            switch (value)
            {
                case Temperature temperature:
                    json.WriteStartObject();
                    json.WriteNumber("temperature_c", temperature.DegreesCelsius);
                    json.WriteEndObject();
                    break;
                case string text:
                    json.WriteStringValue(text);
                    break;
                default:
                    json.WriteNumberValue(Convert.ToDouble(value, CultureInfo.InvariantCulture));
                    break;
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Places(
        Utf8JsonWriter json,
        string name,
        IEnumerable<(SignPlace Place, string Word)> words
    )
    {
        if (words.Any())
        {
            json.WriteStartObject(name);
            foreach (var (place, word) in words)
            {
                json.WriteString(EntryWords.Of(place), word);
            }

            json.WriteEndObject();
        }
    }

    private static void Words(Utf8JsonWriter json, string name, IReadOnlyList<string> words)
    {
        if (words.Count > 0)
        {
            json.WriteStartArray(name);
            foreach (var word in words)
            {
                json.WriteStringValue(word);
            }

            json.WriteEndArray();
        }
    }

    private static void Filled(Utf8JsonWriter json, string name, string text)
    {
        if (text.Length > 0)
        {
            json.WriteString(name, text);
        }
    }

    private static void Id(Utf8JsonWriter json, string name, Guid? id)
    {
        if (id is { } some)
        {
            json.WriteString(name, some);
        }
    }
}

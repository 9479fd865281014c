using System.Globalization;
using System.Text;
using Heapwright.App.Contract;
using Heapwright.Core.Readings;
using NodaTime;
using UnitsNet;

namespace Heapwright.App.Diary;

/// <summary>Reads entries in JSON strictly: as somebody sends them, or as they are kept.</summary>
public static class EntryReader
{
    private static readonly string[] Head = ["schema", "id", "at", "zone", "entry"];

    private static readonly string[] Kept =
    [
        "heap_id",
        "received_at",
        "by",
        "way",
        "at_is_arrival",
        "verdict",
        "given_in",
    ];

    private static readonly string[] Of =
    [
        "temperature_c",
        "temperature_f",
        "spot",
        "depth_cm",
        "air_c",
        "instrument",
        "squeeze",
        "feel",
        "smell",
        "see",
        "visitors",
        .. DeedReader.Fields,
        "text",
        "content_sha256",
        "caption",
        "corrects",
        "reason",
        "replacement",
        "strike_out",
    ];

    private static readonly string[] AllSent = [.. Head, .. Of];

    private static readonly string[] AllKept = [.. Head, .. Kept, .. Of];

    private static readonly string[] Inside = ["at", "zone", "entry", .. Of];

    private static readonly string[] InsideKept = [.. Inside, "at_is_arrival", "given_in"];

    private static readonly Dictionary<string, (string[] Own, string[] Strangers)> OfKind =
        EntryWords.Kinds.ToDictionary(
            k => k,
            k => (OwnFields(k), Of.Except(OwnFields(k), StringComparer.Ordinal).ToArray()),
            StringComparer.Ordinal
        );

    // Which fields tell what kind of entry it is, where it does not say so itself.
    private static readonly (string Field, string Kind)[] Telling =
    [
        ("corrects", "correction"),
        ("temperature_c", "temperature"),
        ("temperature_f", "temperature"),
        ("do", "event"),
        ("content_sha256", "photo"),
        ("text", "note"),
    ];

    /// <summary>An entry as somebody sends it.</summary>
    /// <param name="input">The object.</param>
    /// <param name="arrival">The heap, the way and the moment of its arrival.</param>
    /// <remarks>
    /// Over MQTT an entry with a time may do without an id: the same message for the same heap then has the same one.
    /// </remarks>
    /// <exception cref="InputProblem">Something is wrong in it.</exception>
    public static DiaryEntry Sent(Input input, Arrival arrival)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(arrival);
        var fields = input.Fields(AllSent);
        fields["schema"]?.Whole(Json.Schema, Json.Schema);
        var id =
            fields["id"] is null && fields["at"] is not null && arrival.Way == EntryWay.Mqtt
                ? DeterministicIds.Of(arrival.HeapId, "message " + input.Raw())
                : Id(fields.Needed("id"));
        return Read(fields, id, arrival, kept: false) with { By = arrival.By };
    }

    /// <summary>An entry as it is kept.</summary>
    /// <param name="record">What <see cref="EntryJson.Record"/> wrote.</param>
    /// <param name="name">The name to use in messages.</param>
    /// <exception cref="InputProblem">It is no such record.</exception>
    public static JudgedEntry Recorded(string record, string name = "diary") =>
        Recorded(Input.Read(Encoding.UTF8.GetBytes(record), name));

    /// <summary>An entry as it is kept.</summary>
    /// <param name="input">The object.</param>
    /// <exception cref="InputProblem">It is no such record.</exception>
    public static JudgedEntry Recorded(Input input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var fields = input.Fields(AllKept);
        fields.Needed("schema").Whole(Json.Schema, Json.Schema);
        var entry = Read(
            fields,
            Id(fields.Needed("id")),
            new Arrival(
                Id(fields.Needed("heap_id")),
                (EntryWay)
                    EntryWords.Number(
                        EntryWords.Ways,
                        fields.Needed("way").Choice([.. EntryWords.Ways])
                    ),
                StartTime.Read(fields.Needed("received_at")),
                ""
            ),
            kept: true
        ) with
        {
            By = fields["by"]?.Text(DiaryEntry.LongestBy) ?? "",
        };
        return new JudgedEntry(
            entry,
            fields["verdict"] is { } verdict ? VerdictReader.Read(verdict) : null
        );
    }

    /// <summary>An id.</summary>
    /// <param name="input">The text.</param>
    /// <exception cref="InputProblem">It is none.</exception>
    internal static Guid Id(Input input)
    {
        var text = input.Text(40);
        return Guid.TryParse(text, CultureInfo.InvariantCulture, out var id) && id != Guid.Empty
            ? id
            : throw input.Problem(
                $"\"{text}\" is no id; a UUID such as 0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c11 is needed"
            );
    }

    private static DiaryEntry Read(InputFields fields, Guid id, Arrival arrival, bool kept)
    {
        var kind = fields["entry"]?.Choice([.. EntryWords.Kinds]) ?? Told(fields);
        Belongs(fields, kind);
        var zone =
            fields["zone"] is { } given ? Zone(given)
            : kept ? ""
            : arrival.Zone;
        var arrived = kept ? fields["at_is_arrival"]?.YesNo() ?? false : fields["at"] is null;
        var at = arrived && !kept ? arrival.At : StartTime.Read(fields.Needed("at"));
        return kind switch
        {
            "temperature" => Temperature(fields, kept, id, arrival, at, arrived, zone),
            "sign" => SignReader.Read(fields) with
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                AtIsArrival = arrived,
                Zone = zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
            },
            "event" => new EventEntry
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                AtIsArrival = arrived,
                Zone = zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
                Deed = DeedReader.Read(fields, kept),
            },
            "note" => new NoteEntry
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                AtIsArrival = arrived,
                Zone = zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
                Text = fields.Needed("text").Text(EntryLimits.LongestNote),
            },
            "photo" => new PhotoEntry
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                AtIsArrival = arrived,
                Zone = zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
                Caption = fields["caption"]?.Text(EntryLimits.LongestNote) ?? "",
                ContentHash = Hash(fields.Needed("content_sha256")),
            },
            _ => Correction(fields, kept, id, arrival, at, arrived, zone),
        };
    }

    private static TemperatureEntry Temperature(
        InputFields fields,
        bool kept,
        Guid id,
        Arrival arrival,
        DateTimeOffset at,
        bool arrived,
        string zone
    )
    {
        var (celsius, fahrenheit) = (fields["temperature_c"], fields["temperature_f"]);
        if (celsius is not null && fahrenheit is not null)
        {
            throw fahrenheit.Problem("temperature_c stands there too; give one of the two");
        }

        var inFahrenheit = kept
            ? fields["given_in"]?.Choice("f") is not null
            : fahrenheit is not null;
        return new TemperatureEntry
        {
            Id = id,
            HeapId = arrival.HeapId,
            At = at,
            AtIsArrival = arrived,
            Zone = zone,
            ReceivedAt = arrival.At,
            Way = arrival.Way,
            Temperature = fahrenheit is not null
                ? FromFahrenheit(fahrenheit.Number(-459.67, 3632))
                : UnitsNet.Temperature.FromDegreesCelsius(
                    fields
                        .Needed("temperature_c")
                        .Number(EntryLimits.ColdestC, EntryLimits.HottestC)
                ),
            GivenInFahrenheit = inFahrenheit,
            Spot = (ProbeSpot)
                EntryWords.Number(
                    EntryWords.Spots,
                    fields["spot"]?.Choice([.. EntryWords.Spots]) ?? EntryWords.Spots[0]
                ),
            Depth = fields["depth_cm"] is { } depth
                ? Length.FromCentimeters(depth.Number(0, EntryLimits.DeepestCm))
                : null,
            Air = fields["air_c"] is { } air
                ? UnitsNet.Temperature.FromDegreesCelsius(air.Number(-100, 100))
                : null,
            Instrument = fields["instrument"]?.Text(EntryLimits.LongestInstrument) ?? "",
        };
    }

    /// <summary>°C of a number in °F, to a millionth, so that it reads back as it was written.</summary>
    /// <param name="fahrenheit">The number.</param>
    public static Temperature FromFahrenheit(double fahrenheit) =>
        UnitsNet.Temperature.FromDegreesCelsius(
            Math.Round(UnitsNet.Temperature.FromDegreesFahrenheit(fahrenheit).DegreesCelsius, 6)
        );

    private static CorrectionEntry Correction(
        InputFields fields,
        bool kept,
        Guid id,
        Arrival arrival,
        DateTimeOffset at,
        bool arrived,
        string zone
    )
    {
        var strikes = fields["strike_out"]?.YesNo() ?? false;
        if (strikes == fields["replacement"] is not null)
        {
            throw fields.Owner.Problem(
                "a correction needs either \"replacement\" or \"strike_out\": true"
            );
        }

        DiaryEntry? replacement = null;
        if (fields["replacement"] is { } inside)
        {
            var inner = inside.Fields(kept ? InsideKept : Inside);
            inner.Needed("at");
            replacement = Read(inner, id, arrival, kept);
            if (replacement is CorrectionEntry)
            {
                throw inside.Problem(
                    "a correction cannot stand in the place of an entry; correct the correction instead"
                );
            }
        }

        var corrects = Id(fields.Needed("corrects"));
        return corrects != id
            ? new CorrectionEntry
            {
                Id = id,
                HeapId = arrival.HeapId,
                At = at,
                AtIsArrival = arrived,
                Zone = zone,
                ReceivedAt = arrival.At,
                Way = arrival.Way,
                Corrects = corrects,
                Replacement = replacement,
                Reason = fields["reason"]?.Text(EntryLimits.LongestNote) ?? "",
            }
            : throw fields
                .Needed("corrects")
                .Problem("is the id of the correction itself; the id of another entry is needed");
    }

    private static string Told(InputFields fields)
    {
        foreach (var (field, kind) in Telling)
        {
            if (fields[field] is not null)
            {
                return kind;
            }
        }

        return SignReader.Fields.Any(f => fields[f] is not null)
            ? "sign"
            : throw fields.Owner.Problem(
                $"the field \"entry\" is missing; it is one of {string.Join(", ", EntryWords.Kinds)}"
            );
    }

    private static string[] OwnFields(string kind) =>
        kind switch
        {
            "temperature" =>
            [
                "temperature_c",
                "temperature_f",
                "spot",
                "depth_cm",
                "air_c",
                "instrument",
            ],
            "sign" => SignReader.Fields,
            "event" => DeedReader.Fields,
            "note" => ["text"],
            "photo" => ["content_sha256", "caption"],
            _ => ["corrects", "reason", "replacement", "strike_out"],
        };

    // A field of another kind of entry is a slip, and would be lost.
    private static void Belongs(InputFields fields, string kind)
    {
        var (own, strangers) = OfKind[kind];
        foreach (var name in strangers)
        {
            if (fields[name] is { } stranger)
            {
                throw stranger.Problem(
                    $"an entry \"{kind}\" has no {name}; it has {string.Join(", ", own)}"
                );
            }
        }
    }

    private static string Zone(Input input)
    {
        var text = input.Text(DiaryEntry.LongestZone);
        return DateTimeZoneProviders.Tzdb.GetZoneOrNull(text) is not null
            ? text
            : throw input.Problem(
                $"\"{text}\" is no time zone; one such as Europe/London is needed"
            );
    }

    private static string Hash(Input input)
    {
        var text = input.Text(64);
        return PhotoEntry.IsHash(text)
            ? text
            : throw input.Problem(
                $"\"{text}\" is no SHA-256; 64 small hexadecimal digits are needed"
            );
    }
}

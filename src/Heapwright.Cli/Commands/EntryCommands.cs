using System.Globalization;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Cli.Commands;

/// <summary>The commands that put entries into a diary.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed class EntryCommands(Func<string, DiaryDesk> open)
{
    private const string Heap = "--heap";
    private const StringSplitOptions Parts =
        StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries;

    private readonly Stored stored = new(open);

    /// <summary>A temperature.</summary>
    /// <param name="call">The call.</param>
    public Reply Reading(Call call)
    {
        var (celsius, inFahrenheit) = Temperature(call, "--temperature")!.Value;
        var spot = Stored.Word(call, "--spot", EntryWords.Spots, "core");
        var depth = Stored.Quantity(call, "--depth", "45cm or 18in", "cm", "in", "m")
            is var (deep, unit)
            ? unit switch
            {
                "in" => Length.FromCentimeters(Math.Round(Length.FromInches(deep).Centimeters, 6)),
                "m" => Length.FromCentimeters(Math.Round(Length.FromMeters(deep).Centimeters, 6)),
                _ => Length.FromCentimeters(deep),
            }
            : (Length?)null;
        var air = Temperature(call, "--air")?.Celsius;
        return Put(
            call,
            head => new TemperatureEntry
            {
                Id = head.Id,
                HeapId = head.HeapId,
                At = head.At,
                Zone = head.Zone,
                ReceivedAt = head.ReceivedAt,
                Way = head.Way,
                Temperature = celsius,
                GivenInFahrenheit = inFahrenheit,
                Spot = (ProbeSpot)EntryWords.Number(EntryWords.Spots, spot),
                Depth = depth,
                Air = air,
                Instrument = call.Value("--with") ?? "",
            }
        );
    }

    /// <summary>Another temperature in the place of one.</summary>
    /// <param name="call">The call.</param>
    public Reply CorrectReading(Call call)
    {
        var (celsius, inFahrenheit) = Temperature(call, "--temperature")!.Value;
        return Correct(
            call,
            (desk, id, corrects, arrival) =>
                desk.Correct.Reading(
                    id,
                    corrects,
                    arrival,
                    r => r with { Temperature = celsius, GivenInFahrenheit = inFahrenheit },
                    CancellationToken.None
                )
        );
    }

    /// <summary>A turn.</summary>
    /// <param name="call">The call.</param>
    public Reply Turn(Call call)
    {
        var how = Stored.Word(call, "--how", EntryWords.Hows, "fair");
        var part = Stored.Word(call, "--part", EntryWords.Parts, "all");
        return Done(
            call,
            new TurnedDeed(
                (Thoroughness)EntryWords.Number(EntryWords.Hows, how),
                (TurnedPart)EntryWords.Number(EntryWords.Parts, part)
            )
        );
    }

    /// <summary>Water.</summary>
    /// <param name="call">The call.</param>
    public Reply Water(Call call)
    {
        var litres = Litres(call);
        return Done(call, Checked(() => new WateredDeed { Litres = litres }, "--amount", call));
    }

    /// <summary>Compost that was used on a bed.</summary>
    /// <param name="call">The call.</param>
    public Reply Spread(Call call)
    {
        var litres = Litres(call);
        var bed = call.Value("--bed")!.Trim();
        return bed.Length is 0 or > EntryLimits.LongestBed
            ? throw Stored.Wrong("sites.text_long", bed.Length, EntryLimits.LongestBed)
            : Done(
                call,
                Checked(() => new SpreadDeed { Bed = bed, Litres = litres }, "--amount", call)
            );
    }

    /// <summary>A test that was begun, or its result.</summary>
    /// <param name="call">The call.</param>
    public Reply Test(Call call)
    {
        var word = Stored.Word(call, "--test", EntryWords.Tests, "");
        var deed = new TestedDeed
        {
            Test = (HomeTest)EntryWords.Number(EntryWords.Tests, word),
            Values = [.. (call.Value("--values") ?? "").Split(',', Parts).Select(Value)],
        };
        return HomeTests.Fault(deed) is { } fault
            ? throw Stored.Wrong("sites.question_wrong", fault)
            : Done(call, deed);
    }

    private static TestValue Value(string pair)
    {
        var parts = pair.Split('=', Parts);
        return
            parts.Length == 2
            && double.TryParse(
                parts[1],
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out var value
            )
            && double.IsFinite(value)
            ? new TestValue(parts[0], value)
            : throw Stored.Wrong("diary.test_value", pair);
    }

    private static double Litres(Call call)
    {
        var (value, unit) = Stored
            .Quantity(call, "--amount", "20l or 5gal", "l", "gal", "gal_uk")!
            .Value;
        return unit switch
        {
            "gal" => App.Texts.Measures.UsCustomary.FromVolume(value),
            "gal_uk" => App.Texts.Measures.Imperial.FromVolume(value),
            _ => value,
        };
    }

    /// <summary>Rain.</summary>
    /// <param name="call">The call.</param>
    public Reply Rain(Call call)
    {
        var (value, unit) = Stored.Quantity(call, "--amount", "5mm or 0.2in", "mm", "in")!.Value;
        var rain = unit == "in" ? Math.Round(Length.FromInches(value).Millimeters, 6) : value;
        return Done(call, Checked(() => new RainedDeed { Millimetres = rain }, "--amount", call));
    }

    /// <summary>Another cover.</summary>
    /// <param name="call">The call.</param>
    public Reply Cover(Call call) =>
        Done(call, new CoveredDeed { Kind = Stored.Word(call, "--kind", EntryWords.Covers, "") });

    /// <summary>The end.</summary>
    /// <param name="call">The call.</param>
    public Reply Close(Call call) => Done(call, new ClosedDeed());

    /// <summary>A note.</summary>
    /// <param name="call">The call.</param>
    public Reply Note(Call call)
    {
        var text = string.Join(' ', call.Words).Trim();
        return text.Length is 0 or > EntryLimits.LongestNote
            ? throw Stored.Wrong("sites.text_long", text.Length, EntryLimits.LongestNote)
            : Put(
                call,
                head => new NoteEntry
                {
                    Id = head.Id,
                    HeapId = head.HeapId,
                    At = head.At,
                    Zone = head.Zone,
                    ReceivedAt = head.ReceivedAt,
                    Way = head.Way,
                    Text = text,
                }
            );
    }

    /// <summary>Entries in JSON.</summary>
    /// <param name="call">The call.</param>
    public Reply Send(Call call)
    {
        var question = call.Question();
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, call.Value(Heap)!);
        return DiaryAnswers.Results(
            Stored.Await(desk.Sent.Take(question, Arrival(call, heap), CancellationToken.None)),
            call.Measures
        );
    }

    /// <summary>Strikes an entry out.</summary>
    /// <param name="call">The call.</param>
    public Reply Strike(Call call) =>
        Correct(
            call,
            (desk, id, corrects, arrival) =>
                desk.Correct.StrikeOut(id, corrects, arrival, "", CancellationToken.None)
        );

    private Reply Correct(
        Call call,
        Func<DiaryDesk, Guid, Guid, Arrival, Task<EntryOutcome>> correct
    )
    {
        var corrects = Stored.Id(call, "--entry");
        var id = Stored.Id(call);
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, call.Value(Heap)!);
        return DiaryAnswers.Results(
            [Stored.Await(correct(desk, id, corrects, Arrival(call, heap)))],
            call.Measures
        );
    }

    private Reply Done(Call call, HeapDeed deed) =>
        Put(
            call,
            head => new EventEntry
            {
                Id = head.Id,
                HeapId = head.HeapId,
                At = head.At,
                Zone = head.Zone,
                ReceivedAt = head.ReceivedAt,
                Way = head.Way,
                Deed = deed,
            }
        );

    private Reply Put(Call call, Func<NoteEntry, DiaryEntry> make)
    {
        var id = Stored.Id(call);
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, call.Value(Heap)!);
        var zone = heap.TimeZone();
        var now = NodaTime.Instant.FromDateTimeOffset(call.Now).InZone(zone).ToDateTimeOffset();
        var entry = make(
            new NoteEntry
            {
                Id = id,
                HeapId = heap.Id,
                At = Stored.Time(call, "--at", zone) ?? now,
                Zone = heap.Zone,
                ReceivedAt = call.Now,
                Way = EntryWay.Cli,
                Text = "-",
            }
        );
        return DiaryAnswers.Results(
            Stored.Await(desk.Entries.Record(heap.Id, [entry], CancellationToken.None)),
            call.Measures
        );
    }

    private static Arrival Arrival(Call call, KeptHeap heap) =>
        new(heap.Id, EntryWay.Cli, call.Now, heap.Zone);

    private static (Temperature Celsius, bool InFahrenheit)? Temperature(Call call, string option)
    {
        if (Stored.Quantity(call, option, "58C or 136F", "c", "f") is not var (value, unit))
        {
            return null;
        }

        var celsius =
            unit == "f"
                ? EntryReader.FromFahrenheit(value)
                : UnitsNet.Temperature.FromDegreesCelsius(value);
        return celsius.DegreesCelsius is >= EntryLimits.ColdestC and <= EntryLimits.HottestC
            ? (celsius, unit == "f")
            : throw Stored.Wrong("diary.quantity", option, call.Value(option)!, "58C or 136F");
    }

    private static T Checked<T>(Func<T> make, string option, Call call)
    {
        try
        {
            return make();
        }
        catch (ArgumentOutOfRangeException)
        {
            throw Stored.Wrong("diary.quantity", option, call.Value(option)!, "20l");
        }
    }
}

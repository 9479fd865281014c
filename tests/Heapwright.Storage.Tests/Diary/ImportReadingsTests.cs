using System.Globalization;
using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Diary.Tables;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.Storage.Tests.Diary;

public sealed class ImportReadingsTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    public static TheoryData<string, string> SameReading { get; } =
        new()
        {
            { "iso", "time,temperature_c\n2026-05-27T09:30:00+01:00,58.5\n" },
            { "clock of the zone", "time,temperature_c\n2026-05-27 09:30,58.5\n" },
            { "semicolons, comma, day first", "Datum;Uhrzeit;Temp °C\n27.05.2026;09:30;58,5\n" },
            { "tabs and °F", "date/time\tTemperature (°F)\n27/05/2026 09:30:00\t137.3\n" },
            { "no header", "2026-05-27 09:30|58.5\n" },
            { "seconds since 1970", "unix,celsius\n1779870600,58.5\n" },
            { "days since building", "day;degC\n1.729166667;58.5\n" },
            { "month first", "time,temp_c\n05/27/2026 9:30 AM,58.5\n" },
            { "with units and quotes", "\"time\",\"temp\"\n\"2026-05-27 09:30\",\"58.5 °C\"\n" },
        };

    [Theory]
    [MemberData(nameof(SameReading))]
    public async Task Table_InManyForms_GivesTheSameReading(string name, string text)
    {
        await using var storage = await Started();

        var report = await Import(storage, text);

        Assert.True(report.Kept == 1, $"{name}: {report}");
        var reading = Readings((await storage.Reader.Of(Entries.HeapId, null, Never))!).Single();
        Assert.Equal(58.5, reading.Temperature.DegreesCelsius, 6);
        // A day with nine decimals is good to a tenth of a millisecond.
        Assert.Equal(
            new DateTimeOffset(2026, 5, 27, 9, 30, 0, TimeSpan.FromHours(1)),
            reading.At,
            TimeSpan.FromMilliseconds(1)
        );
    }

    [Fact]
    public async Task Table_WithAllColumns_IsReadWhole()
    {
        await using var storage = await Started();

        await Import(
            storage,
            "time,probe,temp_c,depth_cm,air temp,event\n2026-05-27 09:00,edge,41,30,12,turned\n2026-05-27 10:00,P7,52,45,,water 20 l\n2026-05-27 11:00,,,,,smells of earth\n"
        );

        var record = (await storage.Reader.Of(Entries.HeapId, null, Never))!;
        var first = Readings(record).First();
        Assert.Equal(ProbeSpot.Side, first.Spot);
        Assert.Equal(30, first.Depth!.Value.Centimeters);
        Assert.Equal(12, first.Air!.Value.DegreesCelsius);
        Assert.Equal("P7", Readings(record).Last().Instrument);
        var deeds = record
            .Diary.Standing.Select(s => s.Entry)
            .OfType<EventEntry>()
            .Select(e => e.Deed);
        Assert.Contains(deeds, d => d is TurnedDeed);
        Assert.Contains(deeds, d => d is WateredDeed { Litres: 20 });
        Assert.Contains(
            record.Diary.Standing,
            s => s.Entry is NoteEntry { Text: "smells of earth" }
        );
    }

    [Fact]
    public async Task Table_Twice_AddsNothingTheSecondTime()
    {
        await using var storage = await Started();
        var text = Long(2500);

        var first = await Import(storage, text);
        var second = await Import(storage, text);

        Assert.Equal((2500, 0, 0), (first.Kept, first.AlreadyThere, first.Refused));
        Assert.Equal((0, 2500, 0), (second.Kept, second.AlreadyThere, second.Refused));
        Assert.True((await storage.Reader.Verify(Entries.HeapId, Never)).IsWhole);
    }

    /// <summary>More than one lot: what is known goes on from lot to lot, and the jump in the middle of it is seen.</summary>
    [Fact]
    public async Task Table_OfSeveralLots_IsJudgedAsOne()
    {
        await using var storage = await Started();
        var lines = Long(9001).Split('\n');
        lines[4001] = lines[4001].Split(',')[0] + ",20";

        var report = await Import(storage, string.Join('\n', lines));

        Assert.Equal(9001, report.Kept);
        // Down to 20 °C and up again: two jumps.
        Assert.Equal(2, report.Doubted);
    }

    [Fact]
    public async Task Rows_ThatCannotBeRead_AreToldWithLineAndReasonAndTheRestIsKept()
    {
        await using var storage = await Started();

        var report = await Import(
            storage,
            "time,temp_c\n2026-05-27 09:00,50\nyesterday,51\n2026-05-27 10:00,hot\n2026-05-27 11:00,99999\n\n2026-05-27 12:00,\n2026-05-27 13:00,53\n"
        );

        Assert.Equal((6, 2, 4), (report.Rows, report.Kept, report.Refused));
        Assert.Equal(
            [
                (3, "readings.row_time"),
                (4, "readings.row_temperature"),
                (5, "readings.row_range"),
                (7, "readings.row_empty"),
            ],
            report.FirstRefused.Select(r => (r.Line, r.Why.Code))
        );
        Assert.All(report.FirstRefused, r => Assert.NotEmpty(App.Texts.Words.Of(r.Why)));
    }

    [Fact]
    public async Task Clock_ThatIsPutForwardOrBack_IsFollowed()
    {
        await using var storage = await Started(Instant.FromUtc(2026, 3, 20, 9, 0));

        // London: 01:30 on 29 March does not exist; on 25 October 01:30 comes twice.
        storage.Clock.SetUtcNow(new DateTimeOffset(2026, 11, 1, 12, 0, 0, TimeSpan.Zero));
        var report = await Import(
            storage,
            "time,temp_c\n2026-03-29 00:30,50\n2026-03-29 01:30,50\n2026-10-25 01:30,20\n2026-10-25 01:45,20\n2026-10-25 01:15,20\n"
        );

        Assert.Equal("readings.row_skipped_hour", report.FirstRefused.Single().Why.Code);
        Assert.Equal(
            [
                new DateTime(2026, 3, 29, 0, 30, 0),
                new DateTime(2026, 10, 25, 0, 30, 0),
                new DateTime(2026, 10, 25, 0, 45, 0),
                new DateTime(2026, 10, 25, 1, 15, 0),
            ],
            Readings((await storage.Reader.Of(Entries.HeapId, null, Never))!)
                .Select(r => r.At.UtcDateTime)
        );
    }

    [Theory]
    [InlineData("", "holds no rows")]
    [InlineData("time,temp_c\n", "holds no rows")]
    [InlineData("a,b\n1,2\n", "no column with a time")]
    [InlineData("time,colour\n2026-05-27 09:00,red\n", "no column with a temperature")]
    [InlineData(
        "time,temp_c\n01/02/2026 09:00,50\n03/02/2026 09:00,50\n",
        "--dates dmy or --dates mdy"
    )]
    public void Table_ThatCannotBeUnderstood_IsRefusedInOneSentence(string text, string part)
    {
        var problem = Assert.Throws<InputProblem>(() =>
            TableFormGuess.Of(text, "t.csv", new TableWishes())
        );

        Assert.StartsWith("t.csv: ", problem.Message, StringComparison.Ordinal);
        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Unit_TheTableDoesNotSay_IsGuessedAndSaidSo()
    {
        var form = TableFormGuess.Of(
            "time,temp\n2026-05-27 09:00,131\n",
            "t.csv",
            new TableWishes()
        );
        var told = TableFormGuess.Of(
            "time,temp\n2026-05-27 09:00,131\n",
            "t.csv",
            new TableWishes(Fahrenheit: false)
        );

        Assert.True(form.Fahrenheit);
        Assert.False(form.UnitIsSaid);
        Assert.False(told.Fahrenheit);
    }

    private static string Long(int rows)
    {
        var text = new StringBuilder("time,temp_c\n");
        var at = new DateTime(2026, 5, 26, 0, 0, 0, DateTimeKind.Unspecified);
        for (var i = 0; i < rows; i++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{at.AddSeconds(20 * i):yyyy-MM-dd HH:mm:ss},{50 + (i % 7 * 0.1):0.0}\n"
            );
        }

        return text.ToString();
    }

    private static async Task<ImportReport> Import(TemporaryStorage storage, string text)
    {
        var heap = (await storage.Store.Find<KeptHeap>(Entries.HeapId, Never))!;
        using var reader = new StringReader(text);
        return await new ImportReadings(storage.Entries).Run(
            heap,
            TableFormGuess.Of(text, "t.csv", new TableWishes()),
            reader,
            null,
            Never
        );
    }

    private static IEnumerable<TemperatureEntry> Readings(HeapRecord record) =>
        record.Diary.Standing.Select(s => s.Entry).OfType<TemperatureEntry>();

    private static async Task<TemporaryStorage> Started(Instant? built = null)
    {
        var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put(
            "acts.heap_started",
            ["June heap"],
            [Things.Heap with { BuiltAt = built ?? Things.Heap.BuiltAt }],
            Never
        );
        return storage;
    }
}

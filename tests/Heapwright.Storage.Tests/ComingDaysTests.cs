using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Coming;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Links;
using Heapwright.App.Outlooks;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Storage.Tests.Diary;
using NodaTime;

namespace Heapwright.Storage.Tests;

public sealed class ComingDaysTests
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];

    // The clock stands at noon of 1 June 2026; the heap was built on 25 May.
    [Fact]
    public async Task Coming_OneOfEachKind_StandsOnItsDays()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put(
            "acts.imported",
            ["3"],
            [Things.Site, Things.Heap, Things.Grass, Half(2), Half(0, 92), Half(3, 93)],
            Never
        );
        var note = SignsConclusion.Note(Head(30, 5), "Too dry.");
        await storage.Entries.Record(
            Entries.HeapId,
            [Test(1, 2, HomeTest.Seeds), Test(2, 4, HomeTest.Bag), note],
            Never
        );

        var days = await Coming(storage);

        Assert.Equal(
            [
                // Seeds are read after 3 to 7 days, and so is the bag (data/finish/finish-figures.csv).
                (ComingKind.TestToRead, "2026-05-30", "2026-06-03"),
                // Fresh grass spoils within a day: it came on 31 May.
                (ComingKind.StuffSpoils, "2026-06-01", "2026-06-01"),
                (ComingKind.HalfBuilt, "2026-06-01", "2026-06-01"),
                (ComingKind.TestToRead, "2026-06-01", "2026-06-05"),
                (ComingKind.DidItHelp, "2026-06-03", "2026-06-03"),
            ],
            days.Select(d => (d.Kind, Iso(d.First), Iso(d.Last)))
        );
        Assert.Equal("Lawn mowings: use it before it ferments and turns slimy.", days[1].Text());
        Assert.Equal("Half: go on building; 2 of 3 layers are done.", days[2].Text());
        Assert.DoesNotContain(days, d => d.Text().Contains("Next door", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Coming_AtHandOfOneDay_StandsByName()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put(
            "acts.imported",
            ["3"],
            [
                Things.Site,
                Things.Grass with
                {
                    Id = Things.Id(80),
                    Name = "Verge",
                },
                Things.Grass with
                {
                    Id = Things.Id(81),
                    Name = "Meadow",
                },
                Things.Grass with
                {
                    Id = Things.Id(79),
                    Name = "Orchard",
                },
            ],
            Never
        );

        Assert.Equal(
            ["Meadow", "Orchard", "Verge"],
            (await Coming(storage)).Select(d => d.Values[0])
        );
    }

    [Fact]
    public async Task Coming_ReadAnsweredClosedOrLongPast_IsToldNoMore()
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["2"], [Things.Site, Things.Heap], Never);
        var note = SignsConclusion.Note(Head(30, 1), "Too dry.");
        await storage.Entries.Record(
            Entries.HeapId,
            [
                Test(1, 2, HomeTest.Seeds),
                Test(2, 4, HomeTest.Seeds) with
                {
                    Deed = new TestedDeed
                    {
                        Test = HomeTest.Seeds,
                        Values = [new TestValue("sown", 10), new TestValue("germinated", 9)],
                    },
                },
                note,
                SignsConclusion.Answer(Head(31, 6), note, "yes", "Yes."),
                Test(3, 5, HomeTest.Bag),
            ],
            Never
        );

        Assert.Equal(ComingKind.TestToRead, Assert.Single(await Coming(storage)).Kind);
        storage.Clock.Advance(TimeSpan.FromDays(60));
        Assert.Empty(await Coming(storage));
    }

    [Theory]
    [InlineData("turn", true)]
    [InlineData("wait", false)]
    public async Task Coming_StepOfAForecast_StandsOnItsDay(string deed, bool told)
    {
        await using var storage = await TemporaryStorage.Ready();
        await storage.Recorder.Put("acts.imported", ["2"], [Things.Site, Things.Heap], Never);
        await storage.Entries.Record(Entries.HeapId, [Entries.Read(1, 6, 55)], Never);
        await storage.Forecasts.Keep(
            new KeptForecast
            {
                Id = Things.Id(95),
                HeapId = Entries.HeapId,
                MadeAt = storage.Clock.Now(),
                Entries = 1,
                QuestionHash = "",
                Engine = "",
                Data = "",
                FromDay = 6,
                ReadingsUsed = 1,
                Step = new AdvisedStep(deed, 9, 0, null, null, null, null),
                ChanceBetter = 0.8,
                Latest = null,
                Stale = [],
                Course = [],
            },
            Never
        );

        var days = await Coming(storage);

        // Built on 25 May, 16:00 in London; nine days later is 3 June.
        Assert.Equal(
            told ? [(ComingKind.NextStep, "2026-06-03")] : [],
            days.Select(d => (d.Kind, Iso(d.First)))
        );
        if (told)
        {
            Assert.Equal("June heap: turn it, as things look now.", days[0].Text());
        }
    }

    [Theory]
    [InlineData("turn")]
    [InlineData("water")]
    [InlineData("add_browns")]
    [InlineData("add_greens")]
    [InlineData("cover")]
    [InlineData("stop_adding")]
    [InlineData("close")]
    public void Step_OfEveryDeed_HasASentence(string deed) =>
        Assert.NotNull(App.Texts.Words.TryOf("coming.step_" + deed));

    [Fact]
    public async Task Links_RevokedExpiredAndOfAnotherPurpose_AreGoodNoLonger()
    {
        await using var storage = await TemporaryStorage.Ready();
        var links = new KeepLinks(storage.Links, storage.Clock);
        var (_, calendar) = await links.Calendar(Never);
        var (share, forAWeek) = await links.Share(Entries.HeapId, 7, Never);
        var (_, forever) = await links.Share(null, null, Never);

        Assert.NotNull(await links.Of(calendar, LinkPurpose.Calendar, Never));
        Assert.Null(await links.Of(calendar, LinkPurpose.Share, Never));
        Assert.Equal(Entries.HeapId, (await links.Of(forAWeek, LinkPurpose.Share, Never))!.HeapId);
        // Of a token nothing but its hash is kept.
        Assert.DoesNotContain(
            await storage.Sql("select quote(token_sha256) || quote(id) from link"),
            row => row.Contains(calendar, StringComparison.Ordinal)
        );

        storage.Clock.Advance(TimeSpan.FromDays(7));
        Assert.Null(await links.Of(forAWeek, LinkPurpose.Share, Never));
        Assert.NotNull(await links.Of(forever, LinkPurpose.Share, Never));
        Assert.True(await links.Revoke(share.Id, Never));
        Assert.False(await links.Revoke(share.Id, Never));

        var (_, anew) = await links.Calendar(Never);
        Assert.Null(await links.Of(calendar, LinkPurpose.Calendar, Never));
        Assert.NotNull(await links.Of(anew, LinkPurpose.Calendar, Never));
        Assert.Null(await links.Of("hws_guess", LinkPurpose.Share, Never));
        Assert.Null(await links.Of("", LinkPurpose.Share, Never));
    }

    private static Task<ImmutableArray<ComingDay>> Coming(TemporaryStorage storage) =>
        new ComingDays(
            storage.Store,
            storage.Reader,
            new FollowHeaps(storage.Store, storage.Reader, storage.Forecasts, storage.Clock)
        ).From(storage.Clock.Now(), London, Never);

    private static string Iso(LocalDate day) => NodaTime.Text.LocalDatePattern.Iso.Format(day);

    private static EventEntry Test(int number, double day, HomeTest test) =>
        Entries.Turn(number, day) with
        {
            Deed = new TestedDeed { Test = test },
        };

    private static NoteEntry Head(int number, double day) =>
        new()
        {
            Id = Entries.Id(number),
            HeapId = Entries.HeapId,
            At = Entries.At(day),
            ReceivedAt = Entries.At(day),
            Way = EntryWay.Page,
            Text = "x",
        };

    private static SavedSheet Half(int ticked, int id = 91)
    {
        using var answer = JsonDocument.Parse("""{"layers":[{},{},{}]}""");
        using var question = JsonDocument.Parse("{}");
        return new SavedSheet
        {
            Id = Things.Id(id),
            Name = "Half",
            MadeAt = Instant.FromUtc(2026, 5, 30, 8, 0),
            Question = question.RootElement.Clone(),
            Answer = answer.RootElement.Clone(),
            Ticked = [.. Enumerable.Range(1, ticked)],
        };
    }
}

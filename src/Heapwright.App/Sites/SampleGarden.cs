using System.Collections.Immutable;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>
/// An invented walled kitchen garden with three bays, to look round in before one's own things are typed in. Marked as
/// a sample wherever it is seen, and removed by one act.
/// </summary>
/// <param name="recorder">The way to the record.</param>
/// <param name="entries">The way into the diaries.</param>
public sealed class SampleGarden(SiteRecorder recorder, RecordEntries entries)
{
    /// <summary>Brings the sample garden in.</summary>
    /// <param name="zone">The zone its days are counted in.</param>
    /// <param name="units">The units it is shown in.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> BringIn(string zone, DisplayUnits units, CancellationToken cancel)
    {
        var site = new Site
        {
            Id = Site.OnlyId,
            IsSample = true,
            Name = Said("garden"),
            Zone = zone,
            Units = units,
            Language = Languages.Code,
        };
        ImmutableArray<Item> things =
        [
            .. Things(SiteDays.DayOf(recorder.Clock.Now(), site.TimeZone()), site),
        ];
        var outcome = await recorder.Put("acts.sample_in", [site.Name], [site, .. things], cancel);
        foreach (var heap in outcome.IsDone ? things.OfType<KeptHeap>() : [])
        {
            await entries.Record(
                heap.Id,
                [
                    StartHeap.Built(
                        heap,
                        UsedLoad.Of(heap, SampleHeaps.LoadsOf(heap)),
                        recorder.Clock.GetUtcNow(),
                        EntryWay.Page
                    ),
                    .. SampleHeaps.EntriesOf(heap, recorder.Clock.GetUtcNow()),
                ],
                cancel
            );
        }

        return outcome;
    }

    /// <summary>Takes everything out that belongs to the sample; what the person added stays.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> TakeOut(CancellationToken cancel)
    {
        var store = recorder.Store;
        ImmutableArray<Item> all =
        [
            .. await store.All<StockEntry>(cancel),
            .. await store.All<OwnContainer>(cancel),
            .. await store.All<Bay>(cancel),
            .. await store.All<OwnMaterial>(cancel),
            .. await store.All<Measurement>(cancel),
            .. await store.All<SavedRecipe>(cancel),
            .. await store.All<SavedSheet>(cancel),
            .. await store.All<KeptHeap>(cancel),
            .. await store.All<KeptLesson>(cancel),
            .. await store.All<Site>(cancel),
        ];
        return await recorder.Remove(
            "acts.sample_out",
            [],
            [.. all.Where(i => i.IsSample)],
            cancel
        );
    }

    /// <summary>What something of the sample is called, in the language of whoever brings it in.</summary>
    /// <param name="code">Its code in Texts/Sample.resx.</param>
    internal static string Said(string code) => Words.Of("sample." + code);

    private static IEnumerable<Item> Things(LocalDate today, Site site)
    {
        var (pearWall, middle) = (
            Box(Said("bay_pear_wall"), 1.2, 1.2, 1.1),
            Box(Said("bay_middle"), 1.2, 1.2, 1.1)
        );
        ImmutableArray<OwnContainer> containers =
        [
            Container("bucket", 14, heaped: false),
            Container("wheelbarrow", 85, heaped: true),
        ];
        yield return pearWall;
        yield return middle;
        yield return new Bay
        {
            Id = Guid.CreateVersion7(),
            IsSample = true,
            Name = Said("ring"),
            Shape = "ring",
            DiameterM = 1,
            HeightM = 1,
        };
        foreach (var container in containers)
        {
            yield return container;
        }

        var contents = SiteContents.Of(containers);
        foreach (
            var thing in SampleHeaps.Things(contents, middle, pearWall, today, site.TimeZone())
        )
        {
            yield return thing;
        }

        yield return Stock("grass_clippings_fresh", Said("grass"), 3, "wheelbarrow", today, 0);
        yield return Stock("leaves_mixed_dry", Said("leaves"), 6, "wheelbarrow", today, 40);
        yield return Stock("wood_chips_coarse", Said("chips"), 2, "wheelbarrow", today, 90);
        yield return Stock("kitchen_scraps", Said("scraps"), 3, "bucket", today, 2);
        yield return Stock("horse_manure_straw", Said("manure"), 4, "wheelbarrow", today, 6) with
        {
            Giver = Said("stables"),
        };
    }

    private static OwnContainer Container(string name, double litres, bool heaped) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            IsSample = true,
            Name = name,
            HoldsL = litres,
            IsHeaped = heaped,
        };

    private static Bay Box(string name, double length, double width, double height) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            IsSample = true,
            Name = name,
            Shape = "box",
            LengthM = length,
            WidthM = width,
            HeightM = height,
        };

    private static StockEntry Stock(
        string material,
        string name,
        double amount,
        string unit,
        LocalDate today,
        int days
    ) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            IsSample = true,
            Material = material,
            Name = name,
            Amount = amount,
            Unit = unit,
            Since = today.PlusDays(-days),
        };
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Heapwright.App.Changes;
using Heapwright.App.Ports;
using Heapwright.App.Texts;

namespace Heapwright.App.Sites;

/// <summary>Carries everything out of a site, and into one, as one JSON file.</summary>
/// <param name="recorder">The way to the record.</param>
/// <param name="diary">Where the diaries are kept.</param>
public sealed class CarrySite(SiteRecorder recorder, IDiaryStore diary)
{
    /// <summary>The largest file that is read, in bytes.</summary>
    public const int LargestBytes = 32 << 20;

    private static readonly JsonSerializerOptions Indented = new(ItemKinds.Json)
    {
        WriteIndented = true,
    };

    /// <summary>Everything the site keeps, as the text of a file.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<string> Export(CancellationToken cancel)
    {
        var store = recorder.Store;
        var (diaries, leftOut) = await CarriedDiaries.Fitting(diary, cancel);
        var archive = new Archive
        {
            Schema = Archive.CurrentSchema,
            What = Archive.Mark,
            ExportedAt = recorder.Clock.Now(),
            Site = await store.Find<Site>(Site.OnlyId, cancel),
            Containers = await store.All<OwnContainer>(cancel),
            Bays = await store.All<Bay>(cancel),
            Materials = await store.All<OwnMaterial>(cancel),
            Measurements = await store.All<Measurement>(cancel),
            Stock = await store.All<StockEntry>(cancel),
            Recipes = await store.All<SavedRecipe>(cancel),
            Sheets = await store.All<SavedSheet>(cancel),
            Heaps = await store.All<KeptHeap>(cancel),
            Lessons = await store.All<KeptLesson>(cancel),
            Diaries = diaries,
            EntriesLeftOut = leftOut,
            Record = CarriedRecord.Fitting(await store.Record(cancel)),
        };
        return JsonSerializer.Serialize(archive, Indented);
    }

    /// <summary>What bringing a file in would do; nothing is changed.</summary>
    /// <param name="utf8">The bytes of the file.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImportPreview> Preview(ReadOnlyMemory<byte> utf8, CancellationToken cancel)
    {
        var (archive, refusal) = Read(utf8.Span);
        if (archive is null)
        {
            return new ImportPreview([], refusal);
        }

        var rows = new List<ImportRow>();
        foreach (var group in archive.Items().GroupBy(ItemKinds.Of, StringComparer.Ordinal))
        {
            var row = new ImportRow(group.Key, 0, 0, 0);
            foreach (var item in group)
            {
                var now = await recorder.Store.Current(group.Key, item.Id, cancel);
                row =
                    now is null ? row with { New = row.New + 1 }
                    : string.Equals(now, ItemKinds.Write(item), StringComparison.Ordinal)
                        ? row with
                        {
                            Same = row.Same + 1,
                        }
                    : row with { Changed = row.Changed + 1 };
            }

            rows.Add(row);
        }

        var (entries, fault) = await CarriedDiaries.Compare(archive.Diaries, diary, cancel);
        return fault is not null
            ? new ImportPreview([], fault)
            : new ImportPreview(entries is null ? [.. rows] : [.. rows, entries], null);
    }

    /// <summary>
    /// Brings a file in by one act, which can be undone; things with the same id are replaced, not doubled. Where nothing
    /// was ever kept, the record of the file is taken over instead, and every act of it can be undone as before. Entries of
    /// diaries are added; they stay when the act is undone.
    /// </summary>
    /// <param name="utf8">The bytes of the file.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> BringIn(ReadOnlyMemory<byte> utf8, CancellationToken cancel)
    {
        var (archive, refusal) = Read(utf8.Span);
        if (archive is null)
        {
            return Outcome.Refused(refusal!);
        }

        if ((await CarriedDiaries.Compare(archive.Diaries, diary, cancel)).Fault is { } fault)
        {
            return Outcome.Refused(fault);
        }

        // Entries first: they are added once however often this is done, and no heap may stand there without its diary.
        await CarriedDiaries.BringIn(archive.Diaries, diary, cancel);
        var items = archive.Items();
        if (!archive.Record.IsEmpty && await recorder.TakeOver(archive.Record, cancel) is { } taken)
        {
            return taken;
        }

        return await recorder.Put(
            "acts.imported",
            [items.Length.ToString(CultureInfo.InvariantCulture)],
            items,
            cancel
        );
    }

    private static (Archive? Archive, Refusal? Refusal) Read(ReadOnlySpan<byte> utf8)
    {
        if (utf8.IsEmpty)
        {
            return (null, Refusal.Of("file", "sites.import_missing"));
        }

        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            utf8 = utf8[3..];
        }

        Archive archive;
        try
        {
            archive =
                JsonSerializer.Deserialize<Archive>(utf8, ItemKinds.Json)
                ?? throw new JsonException();
        }
        catch (JsonException problem)
        {
            return (
                null,
                Refusal.Of(
                    "file",
                    "sites.import_not_json",
                    (problem.LineNumber ?? 0) + 1,
                    problem.Path ?? ""
                )
            );
        }

        return Fault(archive) is { } fault ? (null, fault) : (archive, null);
    }

    private static Refusal? Fault(Archive archive)
    {
        if (archive.What != Archive.Mark)
        {
            return Refusal.Of("file", "sites.import_other", archive.What);
        }

        if (archive.Schema is < 1 or > Archive.CurrentSchema)
        {
            return Refusal.Of("file", "sites.import_newer", archive.Schema, Archive.CurrentSchema);
        }

        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var ids = new HashSet<(string, Guid)>();
        foreach (var item in archive.Items())
        {
            var kind = ItemKinds.Of(item);
            var number = numbers[kind] = numbers.GetValueOrDefault(kind) + 1;
            if (!ids.Add((kind, item.Id)))
            {
                return Refusal.Of("file", "sites.import_twice", kind, number, item.Id);
            }

            if (item.Faults().FirstOrDefault() is { } fault)
            {
                return Refusal.Of(
                    "file",
                    "sites.import_fault",
                    kind,
                    number,
                    fault.Field,
                    Words.Of(fault.Why)
                );
            }
        }

        return CarriedRecord.Fault(archive.Record, archive.Items())
            ?? CarriedDiaries.Fault(archive.Diaries);
    }
}

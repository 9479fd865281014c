using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Ports;

namespace Heapwright.App.Sites;

/// <summary>The diaries as a file carries them: every entry with how it came and what was thought of it, chained as here.</summary>
internal static class CarriedDiaries
{
    /// <summary>The most a file carries, in characters of all entries.</summary>
    public const long MostCharacters = 8 << 20;

    /// <summary>All diaries if they are small enough for a file; otherwise none, and how many entries stay behind.</summary>
    /// <param name="diary">Where they are kept.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<(ImmutableArray<CarriedDiary> Diaries, long LeftOut)> Fitting(
        IDiaryStore diary,
        CancellationToken cancel
    )
    {
        var heaps = await diary.Heaps(cancel);
        var diaries = ImmutableArray.CreateBuilder<CarriedDiary>(heaps.Length);
        long characters = 0;
        foreach (var (heapId, _) in heaps.OrderBy(h => h.HeapId))
        {
            var entries = ImmutableArray.CreateBuilder<JsonElement>();
            var head = HashChain.Start;
            await foreach (var link in diary.Chain(heapId).WithCancellation(cancel))
            {
                characters += link.Json.Length;
                if (characters > MostCharacters)
                {
                    return ([], heaps.Sum(h => h.Entries));
                }

                using var document = JsonDocument.Parse(link.Json);
                entries.Add(document.RootElement.Clone());
                head = link.Hash;
            }

            diaries.Add(new CarriedDiary(heapId, head, entries.ToImmutable()));
        }

        return (diaries.ToImmutable(), 0);
    }

    /// <summary>What is wrong with diaries; null if they hold together.</summary>
    /// <param name="diaries">The diaries of a file.</param>
    public static Refusal? Fault(ImmutableArray<CarriedDiary> diaries)
    {
        var ids = new HashSet<Guid>();
        foreach (var carried in diaries)
        {
            var head = HashChain.Start;
            var number = 0;
            foreach (var element in carried.Entries)
            {
                number++;
                try
                {
                    var judged = Read(element);
                    var text = EntryJson.Record(judged);
                    head = HashChain.Link(head, text);
                    if (judged.Entry.HeapId != carried.HeapId || !ids.Add(judged.Entry.Id))
                    {
                        return Refusal.Of(
                            "file",
                            "sites.import_diary",
                            carried.HeapId,
                            number,
                            judged.Entry.Id
                        );
                    }
                }
                catch (InputProblem problem)
                {
                    return Refusal.Of(
                        "file",
                        "sites.import_diary",
                        carried.HeapId,
                        number,
                        problem.Message
                    );
                }
            }

            if (!string.Equals(head, carried.Head, StringComparison.Ordinal))
            {
                return Refusal.Of("file", "sites.import_chain", carried.HeapId);
            }
        }

        return null;
    }

    /// <summary>How many entries are new and how many are there already, or which one says something else here.</summary>
    /// <param name="diaries">The diaries of a file, without fault.</param>
    /// <param name="diary">Where they are kept.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<(ImportRow? Row, Refusal? Fault)> Compare(
        ImmutableArray<CarriedDiary> diaries,
        IDiaryStore diary,
        CancellationToken cancel
    )
    {
        var row = new ImportRow("entry", 0, 0, 0);
        foreach (var carried in diaries)
        {
            foreach (var entry in carried.Entries.Select(e => Read(e).Entry))
            {
                if (await diary.Find(entry.Id, cancel) is not { } there)
                {
                    row = row with { New = row.New + 1 };
                }
                else if (there.Entry.SaysTheSameAs(entry))
                {
                    row = row with { Same = row.Same + 1 };
                }
                else
                {
                    return (
                        null,
                        Refusal.Of("file", "sites.import_entry_differs", entry.Id, carried.HeapId)
                    );
                }
            }
        }

        return (row.New + row.Same > 0 ? row : null, null);
    }

    /// <summary>Adds what is not there yet.</summary>
    /// <param name="diaries">The diaries of a file, without fault.</param>
    /// <param name="diary">Where they are kept.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task BringIn(
        ImmutableArray<CarriedDiary> diaries,
        IDiaryStore diary,
        CancellationToken cancel
    )
    {
        foreach (var carried in diaries)
        {
            foreach (var part in carried.Entries.Chunk(RecordEntries.MostAtOnce))
            {
                await diary.Append(carried.HeapId, [.. part.Select(Read)], cancel);
            }
        }
    }

    private static JudgedEntry Read(JsonElement element) =>
        EntryReader.Recorded(Input.Read(Encoding.UTF8.GetBytes(element.GetRawText()), "entry"));
}

using Heapwright.App.Changes;
using Heapwright.App.Diary.Tables;
using Heapwright.App.Ports;
using Heapwright.App.Sites;

namespace Heapwright.App.Diary;

/// <summary>Everything that is done with heaps and their diaries, over one place where things are kept.</summary>
/// <param name="Items">Where the things of the site are kept.</param>
/// <param name="Start">Starts heaps.</param>
/// <param name="Entries">The way into the diaries.</param>
/// <param name="Sent">Takes entries in JSON.</param>
/// <param name="Reader">Reads the diaries.</param>
/// <param name="Correct">Corrects entries.</param>
/// <param name="Tables">Brings tables in.</param>
/// <param name="Devices">The devices that may send.</param>
/// <param name="Repeats">Tells what was sent a second time.</param>
/// <param name="Photos">Where the images are kept.</param>
/// <param name="Lessons">Keeps what heaps taught.</param>
public sealed record DiaryDesk(
    IItemStore Items,
    StartHeap Start,
    RecordEntries Entries,
    SentEntries Sent,
    ReadDiary Reader,
    CorrectEntry Correct,
    ImportReadings Tables,
    KeepDevices Devices,
    RepeatedEntries Repeats,
    IPhotoStore Photos,
    KeepLessons Lessons
)
{
    /// <summary>A desk over these stores.</summary>
    /// <param name="recorder">The way to the record of the site.</param>
    /// <param name="diary">Where the diaries are kept.</param>
    /// <param name="photos">Where the images are kept.</param>
    /// <param name="devices">Where the devices are kept.</param>
    /// <param name="gate">The gates of the heaps.</param>
    public static DiaryDesk Over(
        SiteRecorder recorder,
        IDiaryStore diary,
        IPhotoStore photos,
        IDeviceStore devices,
        IHeapGate gate
    )
    {
        ArgumentNullException.ThrowIfNull(recorder);
        var entries = new RecordEntries(recorder.Store, diary, photos, gate, recorder.Clock);
        return new DiaryDesk(
            recorder.Store,
            new StartHeap(recorder, entries),
            entries,
            new SentEntries(entries),
            new ReadDiary(recorder.Store, diary),
            new CorrectEntry(diary, entries),
            new ImportReadings(entries),
            new KeepDevices(devices, recorder.Clock),
            new RepeatedEntries(diary),
            photos,
            new KeepLessons(recorder)
        );
    }
}

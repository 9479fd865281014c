using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>What heaps taught, as it is kept.</summary>
/// <param name="recorder">The way to the record.</param>
public sealed class KeepLessons(SiteRecorder recorder)
{
    /// <summary>Keeps a lesson, new or in the place of an older one of the same heap.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(KeptLesson lesson, CancellationToken cancel) =>
        recorder.Put("acts.lesson_kept", [lesson.Name], [lesson], cancel);

    /// <summary>Has a lesson used for the next heaps, or not.</summary>
    /// <param name="lesson">Which.</param>
    /// <param name="used">Whether it is used.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Use(Guid lesson, bool used, CancellationToken cancel) =>
        recorder.Edit<KeptLesson>(
            lesson,
            old =>
                (
                    old with
                    {
                        IsUsed = used,
                    },
                    used ? "acts.lesson_used" : "acts.lesson_unused",
                    [old.Name]
                ),
            cancel
        );

    /// <summary>Takes a lesson out.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(KeptLesson lesson, CancellationToken cancel) =>
        recorder.Remove("acts.lesson_removed", [lesson.Name], [lesson], cancel);
}

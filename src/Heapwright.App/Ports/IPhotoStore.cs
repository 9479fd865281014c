using Heapwright.App.Diary;

namespace Heapwright.App.Ports;

/// <summary>Where the images of photo entries are kept, each under the hash of its bytes.</summary>
public interface IPhotoStore
{
    /// <summary>Keeps an image; one that is there already is not kept again.</summary>
    /// <param name="photo">The image.</param>
    /// <param name="cancel">Gives up.</param>
    Task Keep(Photo photo, CancellationToken cancel);

    /// <summary>The image of a hash; null where there is none.</summary>
    /// <param name="contentHash">The hash.</param>
    /// <param name="cancel">Gives up.</param>
    Task<Photo?> Find(string contentHash, CancellationToken cancel);

    /// <summary>Whether there is an image of a hash.</summary>
    /// <param name="contentHash">The hash.</param>
    /// <param name="cancel">Gives up.</param>
    Task<bool> Has(string contentHash, CancellationToken cancel);
}

using Heapwright.App.Changes;
using Heapwright.Core.Amounts;

namespace Heapwright.App.Sites;

/// <summary>The site itself, its bays, its containers and the materials of its own.</summary>
/// <param name="recorder">The way to the record.</param>
public sealed class KeepSite(SiteRecorder recorder)
{
    /// <summary>Starts a site of one's own.</summary>
    /// <param name="site">Its name, zone and units.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Start(Site site, CancellationToken cancel) =>
        recorder.Put("acts.site_started", [site.Name], [site], cancel);

    /// <summary>Changes name, zone, units or language.</summary>
    /// <param name="site">The site as it shall be.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Change(Site site, CancellationToken cancel) =>
        recorder.Put("acts.site_changed", [site.Name], [site], cancel);

    /// <summary>Keeps a bay, new or changed.</summary>
    /// <param name="bay">The bay.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(Bay bay, CancellationToken cancel) =>
        recorder.Put("acts.bay_kept", [bay.Name], [bay], cancel);

    /// <summary>Takes a bay out.</summary>
    /// <param name="bay">The bay.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(Bay bay, CancellationToken cancel) =>
        recorder.Remove("acts.bay_removed", [bay.Name], [bay], cancel);

    /// <summary>Keeps a container, new or changed; every name once.</summary>
    /// <param name="container">The container.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> Keep(OwnContainer container, CancellationToken cancel)
    {
        var all = await recorder.Store.All<OwnContainer>(cancel);
        return all.Any(c => c.Id != container.Id && c.Name == container.Name)
            ? Outcome.Refused(Refusal.Of("name", "sites.container_twice", container.Name))
            : await recorder.Put("acts.container_kept", [container.Name], [container], cancel);
    }

    /// <summary>
    /// Takes a container out; one whose name is no usual one is refused while something at hand is measured in it,
    /// since that amount would then mean nothing.
    /// </summary>
    /// <param name="container">The container.</param>
    /// <param name="usual">The containers whose size is known without it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> Remove(
        OwnContainer container,
        ContainerSet usual,
        CancellationToken cancel
    )
    {
        if (usual.Find(container.Name) is null)
        {
            var stock = await recorder.Store.All<StockEntry>(cancel);
            if (stock.FirstOrDefault(s => s.Unit == container.Name) is { } entry)
            {
                return Outcome.Refused(
                    Refusal.Of("", "sites.container_in_use", container.Name, entry.Name)
                );
            }
        }

        return await recorder.Remove(
            "acts.container_removed",
            [container.Name],
            [container],
            cancel
        );
    }

    /// <summary>Keeps a material of the site's own, new or changed.</summary>
    /// <param name="material">The material.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(OwnMaterial material, CancellationToken cancel) =>
        recorder.Put("acts.material_kept", [material.Name], [material], cancel);

    /// <summary>Keeps a measurement.</summary>
    /// <param name="measurement">The measurement.</param>
    /// <param name="name">What the material is called.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Keep(Measurement measurement, string name, CancellationToken cancel) =>
        recorder.Put("acts.measured", [name], [measurement], cancel);
}

using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Heapwright.Web.Hosting;

/// <summary>Healthy when what is kept can be read.</summary>
internal sealed class StorageHealth(IItemStore store) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context,
        CancellationToken cancellationToken = default
    )
    {
        await store.Find<Site>(Site.OnlyId, cancellationToken);
        return HealthCheckResult.Healthy();
    }
}

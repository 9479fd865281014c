using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http.Extensions;

namespace Heapwright.Web.Hosting;

/// <summary>
/// A form that its page no longer has: sent from a second tab, or by the browser's way back, after what it was for was done.
/// The page is shown as it stands now and says so, where the browser would show an empty page of its own.
/// </summary>
internal static class StaleForms
{
    public static void UseStaleForms(this WebApplication app) =>
        app.Use(
            async (context, next) =>
            {
                await next(context);
                if (
                    context.Response
                        is { StatusCode: StatusCodes.Status400BadRequest, HasStarted: false }
                    && HttpMethods.IsPost(context.Request.Method)
                    && context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>()
                        is not null
                    && context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true }
                )
                {
                    var query = new QueryBuilder { { "refused", "form_gone" } };
                    context.Response.StatusCode = StatusCodes.Status303SeeOther;
                    context.Response.Headers.Location = context.Request.Path + query.ToString();
                }
            }
        );
}

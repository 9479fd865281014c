using System.Globalization;
using Heapwright.App.Changes;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Components;

namespace Heapwright.Web.Components;

/// <summary>What every page has: the request, the site, what was typed, and the way to the next page.</summary>
public abstract class SitePage : ComponentBase
{
    /// <summary>The request.</summary>
    [CascadingParameter]
    protected HttpContext Context { get; set; } = default!;

    /// <summary>The site.</summary>
    [Inject]
    protected Here Here { get; set; } = default!;

    /// <summary>The way to another page.</summary>
    [Inject]
    protected NavigationManager Navigation { get; set; } = default!;

    /// <summary>What was typed, once <see cref="Take"/> was called.</summary>
    protected Posted Typed { get; private set; } = Posted.Nothing;

    /// <summary>How quantities are shown.</summary>
    protected Shown Show => Here.Show;

    /// <summary>Ends the work when the caller is gone.</summary>
    protected CancellationToken Stop => Context.RequestAborted;

    /// <summary>Takes what was typed into the form.</summary>
    protected Posted Take() => Typed = Posted.From(Context);

    /// <summary>A field of the query.</summary>
    /// <param name="name">The field.</param>
    protected string Asked(string name) => Context.Request.Query[name].ToString().Trim();

    /// <summary>
    /// Goes on after a command: to the next page with what was done on top of it, or back to this one with the reasons.
    /// </summary>
    /// <param name="outcome">The outcome of the command.</param>
    /// <param name="url">The next page.</param>
    protected void GoOn(Outcome outcome, string url)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        Typed.Refuse(outcome);
        if (outcome.IsDone)
        {
            Navigation.NavigateTo(
                outcome.Act is { } act
                    ? LocalUrl.With(url, "done", act.Number.ToString(CultureInfo.InvariantCulture))
                    : url
            );
        }
    }

    /// <summary>What a field shows: what was typed if anything was, what is kept otherwise.</summary>
    /// <param name="field">The field.</param>
    /// <param name="kept">What is kept.</param>
    protected string Shows(string field, string kept) => Typed[field] ?? kept;
}

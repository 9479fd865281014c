using System.Globalization;
using Heapwright.App.Changes;

namespace Heapwright.Web.Showing;

/// <summary>What came with a form, and what was wrong with it, field by field; nothing typed is lost.</summary>
public sealed class Posted
{
    private readonly Func<string, string?> read;
    private readonly Dictionary<string, string> faults = new(StringComparer.Ordinal);

    private Posted(Func<string, string?> read) => this.read = read;

    /// <summary>Nothing was sent.</summary>
    public static Posted Nothing { get; } = new(_ => null);

    /// <summary>Whether anything was refused.</summary>
    public bool IsRefused => faults.Count > 0;

    /// <summary>All refusals, by field.</summary>
    public IReadOnlyDictionary<string, string> Faults => faults;

    /// <summary>Takes refusals where nothing can be sent.</summary>
    public static Posted Empty() => new(_ => null);

    /// <summary>The form of a request.</summary>
    /// <param name="context">The request.</param>
    public static Posted From(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Request.HasFormContentType
            ? new Posted(name => Last(context.Request.Form[name]))
            : new Posted(_ => null);
    }

    /// <summary>The query of a request.</summary>
    /// <param name="context">The request.</param>
    public static Posted FromQuery(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return new Posted(name => Last(context.Request.Query[name]));
    }

    /// <summary>What was typed into a field, trimmed; null where the field was not sent.</summary>
    /// <param name="field">The field.</param>
    public string? this[string field] => read(field)?.Trim();

    /// <summary>A number; refused where it cannot be read.</summary>
    /// <param name="field">The field.</param>
    public double Number(string field)
    {
        if (
            NumberText.Read(this[field], field, CultureInfo.CurrentCulture, out var value) is
            { } refusal
        )
        {
            Refuse(refusal);
        }

        return value;
    }

    /// <summary>A number, or null where nothing was typed.</summary>
    /// <param name="field">The field.</param>
    public double? NumberOrNone(string field) =>
        string.IsNullOrEmpty(this[field]) ? null : Number(field);

    /// <summary>Why a field was refused; null where it was not.</summary>
    /// <param name="field">The field.</param>
    public string? Fault(string field) => faults.GetValueOrDefault(field);

    /// <summary>Refuses a field; the first reason stands.</summary>
    /// <param name="refusal">The reason.</param>
    public void Refuse(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        faults.TryAdd(refusal.Field, Say.Of(refusal));
    }

    /// <summary>Takes over what a command refused.</summary>
    /// <param name="outcome">The outcome of the command.</param>
    public void Refuse(Outcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        foreach (var refusal in outcome.Refusals)
        {
            Refuse(refusal);
        }
    }

    private static string? Last(Microsoft.Extensions.Primitives.StringValues values) =>
        values.Count == 0 ? null : values[^1];
}

using Microsoft.AspNetCore.Http.Extensions;

namespace Heapwright.Web.Showing;

/// <summary>Addresses within this site.</summary>
public static class LocalUrl
{
    /// <summary>The address of a request without some of its query.</summary>
    /// <param name="request">The request.</param>
    /// <param name="fields">The fields of the query to leave out.</param>
    public static string Without(HttpRequest request, params string[] fields)
    {
        ArgumentNullException.ThrowIfNull(request);
        var query = new QueryBuilder(
            request
                .Query.Where(q => !fields.Contains(q.Key, StringComparer.Ordinal))
                .SelectMany(q => q.Value.Select(v => KeyValuePair.Create(q.Key, v ?? "")))
        );
        return request.Path.ToUriComponent() + query.ToQueryString().ToUriComponent();
    }

    /// <summary>An address with one more field in its query.</summary>
    /// <param name="url">The address.</param>
    /// <param name="field">The field.</param>
    /// <param name="value">Its value.</param>
    public static string With(string url, string field, string value)
    {
        ArgumentNullException.ThrowIfNull(url);
        var sign = url.Contains('?', StringComparison.Ordinal) ? '&' : '?';
        return $"{url}{sign}{field}={Uri.EscapeDataString(value)}";
    }

    /// <summary>The address if it leads into this site; the front page otherwise.</summary>
    /// <param name="url">An address that came with a request.</param>
    public static string Safe(string? url) =>
        url is { Length: > 0 }
        && url[0] == '/'
        && (url.Length == 1 || (url[1] != '/' && url[1] != '\\'))
        && !url.Any(char.IsControl)
            ? url
            : "/";
}

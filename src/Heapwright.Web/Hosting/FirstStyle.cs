using System.Security.Cryptography;
using System.Text;

namespace Heapwright.Web.Hosting;

/// <summary>
/// The style of the pages, which comes within the first page that a browser is given: on a slow network the file apart would
/// cost it another way there and back before anything is seen. From the second page on it is the file, which is kept.
/// </summary>
internal sealed class FirstStyle
{
    /// <summary>The file of the style, and how a page names it.</summary>
    public const string File = "heap.css";

    private const string Cookie = "style";

    private readonly string _mark;

    /// <summary>Reads the style.</summary>
    /// <param name="host">Where the files of the site lie.</param>
    public FirstStyle(IWebHostEnvironment host)
    {
        using var reader = new StreamReader(
            host.WebRootFileProvider.GetFileInfo(File).CreateReadStream(),
            Encoding.UTF8
        );
        Text = reader.ReadToEnd().ReplaceLineEndings("\n");
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(Text));
        _mark = Convert.ToHexStringLower(hash)[..8];
        Source = $"'sha256-{Convert.ToBase64String(hash)}'";
    }

    /// <summary>The style itself.</summary>
    public string Text { get; }

    /// <summary>What the rules of a page name to let this style, and no other, stand within it.</summary>
    public string Source { get; }

    /// <summary>
    /// True where this browser has not been given this style yet; the answer then says that it has. To be asked once for each page,
    /// before any of it is sent.
    /// </summary>
    /// <param name="context">The request for a page.</param>
    public bool IsNewTo(HttpContext context)
    {
        if (context.Request.Cookies[Cookie] == _mark)
        {
            return false;
        }

        context.Response.Cookies.Append(
            Cookie,
            _mark,
            new CookieOptions
            {
                HttpOnly = true,
                IsEssential = true,
                MaxAge = TimeSpan.FromDays(365),
                SameSite = SameSiteMode.Lax,
                Secure = context.Request.IsHttps,
            }
        );
        return true;
    }
}

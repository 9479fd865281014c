using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;

namespace Heapwright.Web.Tests;

public sealed partial class BackupPageTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    [Fact]
    public async Task Page_MakeChangeLookRestore_BringsTheOldStateBackAndCanBeTakenBack()
    {
        await using var site = new SiteUnderTest();
        var caller = site.Caller();
        await caller.OwnSite();
        var made = await caller.Send("/settings/backup", "make");
        Assert.Equal("/settings/backup?made=1", Path(made));
        await caller.Send(
            "/settings/bays",
            "bay",
            ("name", "Later bay"),
            ("shape", "box"),
            ("length_m", "1"),
            ("width_m", "1"),
            ("height_m", "1")
        );
        Assert.Contains(
            "Later bay",
            await caller.GetStringAsync("/", Never),
            StringComparison.Ordinal
        );
        var name = Names().Match(await caller.GetStringAsync("/settings/backup", Never)).Value;

        var look = "/settings/backup?look=" + name;
        var page = await caller.GetStringAsync(look, Never);
        Assert.Contains("1 change in the list of changes", page, StringComparison.Ordinal);
        var restored = await caller.Send(look, "restore");

        Assert.StartsWith(
            "/settings/backup?restored=heapwright-",
            Path(restored),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(
            "Later bay",
            await caller.GetStringAsync("/", Never),
            StringComparison.Ordinal
        );
        var before = Path(restored).Split('=')[1];
        Assert.Contains(
            before,
            await caller.GetStringAsync(Path(restored), Never),
            StringComparison.Ordinal
        );
        await caller.Send("/settings/backup?look=" + before, "restore");
        Assert.Contains(
            "Later bay",
            await caller.GetStringAsync("/", Never),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Page_UploadedFile_IsLookedAtAndRestored()
    {
        await using var site = new SiteUnderTest();
        var caller = site.Caller();
        await caller.OwnSite();
        await caller.Send("/settings/backup", "make");
        var name = Names().Match(await caller.GetStringAsync("/settings/backup", Never)).Value;
        var zip = await caller.GetByteArrayAsync("/settings/backup/" + name, Never);
        await using var other = new SiteUnderTest();
        var there = other.Caller();

        var uploaded = await Upload(there, zip);
        Assert.Equal("/settings/backup?look=uploaded", Path(uploaded));
        Assert.Equal(
            "/settings/backup?restored=1",
            Path(await there.Send("/settings/backup?look=uploaded", "restore"))
        );

        Assert.Contains(
            "Top plot",
            await there.GetStringAsync("/", Never),
            StringComparison.Ordinal
        );
        var wrong = await Upload(there, "no zip"u8.ToArray());
        Assert.Contains(
            "The chosen file is no zip, or was cut off",
            await there.GetStringAsync(Path(wrong), Never),
            StringComparison.Ordinal
        );
        Assert.Equal("/settings/backup?wrong=missing", Path(await Upload(there, [])));
    }

    [Fact]
    public async Task Upload_WithoutTheTokenOfTheForm_IsRefused()
    {
        await using var site = new SiteUnderTest();
        using var form = new MultipartFormDataContent
        {
            { new ByteArrayContent([1, 2, 3]), "file", "backup.zip" },
        };

        var answer = await site.Caller().PostAsync("/settings/backup/upload", form, Never);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Backup_FromAnotherMachine_IsNeitherShownNorGiven()
    {
        await using var site = new SiteUnderTest();
        var caller = site.Caller();
        await caller.OwnSite();
        await caller.Send("/settings/backup", "make");
        var name = Names().Match(await caller.GetStringAsync("/settings/backup", Never)).Value;

        site.From = IPAddress.Parse("192.168.1.20");
        var file = await caller.GetAsync("/settings/backup/" + name, Never);
        var page = await caller.GetStringAsync("/settings/backup?look=" + name, Never);

        Assert.Equal(HttpStatusCode.Forbidden, file.StatusCode);
        Assert.DoesNotContain("href=\"/settings/backup/", page, StringComparison.Ordinal);
        Assert.DoesNotContain("What this backup holds", page, StringComparison.Ordinal);
        Assert.Contains("only on the machine that runs Heapwright", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/settings/backup/heapwright.db")]
    [InlineData("/settings/backup/..%2Fheapwright.db")]
    [InlineData("/settings/backup/%2e%2e%2fheapwright.db")]
    public async Task Download_OfAnythingButABackup_IsNotFound(string url)
    {
        await using var site = new SiteUnderTest();

        var answer = await site.Caller().GetAsync(url, Never);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private static async Task<HttpResponseMessage> Upload(HttpClient caller, byte[] bytes)
    {
        var html = await caller.GetStringAsync("/settings/backup", Never);
        var token = Token().Match(html[html.IndexOf("/upload", StringComparison.Ordinal)..]);
        using var file = new ByteArrayContent(bytes);
        file.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        using var form = new MultipartFormDataContent
        {
            { new StringContent(token.Groups["v"].Value), "__RequestVerificationToken" },
            { file, "file", "../../evil.zip" },
        };
        return await caller.PostAsync("/settings/backup/upload", form, Never);
    }

    private static string Path(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var url = answer.Headers.Location!.ToString();
        return url.StartsWith('/') ? url : new Uri(url).PathAndQuery;
    }

    [GeneratedRegex(
        "heapwright-[0-9TZ]+-asked.zip",
        RegexOptions.None,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Names();

    [GeneratedRegex(
        "__RequestVerificationToken\" value=\"(?<v>[^\"]*)\"",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Token();
}

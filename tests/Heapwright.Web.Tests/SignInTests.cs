using System.Net;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace Heapwright.Web.Tests;

/// <summary>Who may do what from another machine, for how long, and under what name.</summary>
public sealed class SignInTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly SiteUnderTest site = new();
    private readonly Guid heapId = Guid.CreateVersion7();
    private HttpClient caller = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    private static Instant Now => Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());

    public async ValueTask InitializeAsync()
    {
        caller = site.Caller();
        await caller.OwnSite();
        Assert.True(
            (await Desk.Start.Start(HeapPageTests.Heap(heapId), EntryWay.Cli, Never)).IsDone
        );
        site.From = IPAddress.Parse("192.168.1.30");
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    [Fact]
    public async Task Coordinator_RunsTheYardButNotWhoMayDoWhat()
    {
        Assert.Equal(HttpStatusCode.Forbidden, await NewBay("North"));
        await SignIn("Robin", DeviceRole.Coordinator);

        Assert.NotEqual(HttpStatusCode.Forbidden, await NewBay("North"));

        var bays = await Desk.Items.All<Bay>(Never);
        Assert.Contains("North", bays.Select(b => b.Name));
        foreach (var page in new[] { "devices", "mail", "backup/upload" })
        {
            Assert.Equal(
                HttpStatusCode.Forbidden,
                (await caller.PostAsync("/settings/" + page, null, Never)).StatusCode
            );
        }

        Assert.Equal("Robin", Assert.Single(await Desk.Devices.All(Never)).Name);
    }

    [Fact]
    public async Task Volunteer_WritesIntoDiariesUnderANameAndNowhereElse()
    {
        await SignIn("Kim", DeviceRole.Volunteer);

        await caller.Send(
            $"/heaps/{heapId:N}/reading",
            "tap",
            ("id", Guid.NewGuid().ToString("N")),
            ("tens", "50"),
            ("units", "8")
        );

        var record = await Desk.Reader.Of(heapId, null, Never);
        var reading = Assert.Single(
            record!.Diary.Standing.Select(s => s.Entry).OfType<TemperatureEntry>()
        );
        Assert.Equal("Kim", reading.By);
        Assert.Contains(
            "by Kim",
            await caller.GetStringAsync($"/heaps/{heapId:N}", Never),
            StringComparison.Ordinal
        );
        Assert.True((await Desk.Reader.Verify(heapId, Never)).IsWhole);
        Assert.Equal(HttpStatusCode.Forbidden, await NewBay("North"));
    }

    [Fact]
    public async Task SignedIn_WhenItsTimeIsOver_MayDoNothing()
    {
        var token = await SignIn("Kim", DeviceRole.Coordinator, Now + Duration.FromHours(2));
        Assert.NotEqual(HttpStatusCode.Forbidden, await NewBay("North"));
        Assert.NotNull(await Desk.Devices.Of(token, Never));

        var (_, over, _) = await Desk.Devices.Add(
            "guest",
            Never,
            DeviceRole.Coordinator,
            Now - Duration.FromSeconds(1)
        );

        Assert.Null(await Desk.Devices.Of(over, Never));
        await caller.Send("/pair", "out");
        Assert.Equal(HttpStatusCode.Forbidden, await NewBay("South"));
        await caller.Send("/pair", "pair", ("token", over));
        Assert.Equal(HttpStatusCode.Forbidden, await NewBay("South"));
    }

    [Fact]
    public async Task DevicesPage_LetsSomebodyInUntilTonightInARole()
    {
        site.From = IPAddress.Loopback;

        var page = await (
            await caller.Send(
                "/settings/devices",
                "device",
                ("name", "Kim"),
                ("role", "coordinator"),
                ("until", "tonight")
            )
        ).Content.ReadAsStringAsync(Never);

        var device = Assert.Single(await Desk.Devices.All(Never));
        Assert.Equal(("Kim", DeviceRole.Coordinator), (device.Name, device.Role));
        Assert.InRange(device.Until!.Value, Now, Now + Duration.FromHours(25));
        var zone = DateTimeZoneProviders.Tzdb[(await Desk.Items.All<Site>(Never)).Single().Zone];
        Assert.Equal(LocalTime.Midnight, device.Until.Value.InZone(zone).TimeOfDay);
        Assert.Contains("can write as Kim", page, StringComparison.Ordinal);
    }

    private async Task<HttpStatusCode> NewBay(string name) =>
        (await caller.NewBay(name)).StatusCode;

    private async Task<string> SignIn(string name, DeviceRole role, Instant? until = null)
    {
        var (_, token, _) = await Desk.Devices.Add(name, Never, role, until);
        await caller.Send("/pair", "pair", ("token", token));
        return token;
    }
}

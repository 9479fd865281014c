using Heapwright.App.Diary;

namespace Heapwright.Storage.Rows;

/// <summary>The row of a device that may send entries.</summary>
public sealed class DeviceRow
{
    /// <summary>The role of the devices from before there were roles, which only wrote into diaries.</summary>
    public static string Usual => KeepDevices.Of(DeviceRole.Volunteer);

    /// <summary>Which.</summary>
    public Guid Id { get; set; }

    /// <summary>What people call it.</summary>
    public string Name { get; set; } = "";

    /// <summary>What it may do, one of <see cref="KeepDevices.Roles"/>.</summary>
    public string Role { get; set; } = Usual;

    /// <summary>Until when it may write, in ISO 8601; null for as long as it is not taken off.</summary>
    public string? UntilUtc { get; set; }

    /// <summary>The hash of its token, in hexadecimal digits; the token itself is kept nowhere.</summary>
    public string TokenSha256 { get; set; } = "";

    /// <summary>When it was named, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>Since when it may not send any more, in ISO 8601; null while it may.</summary>
    public string? RevokedAtUtc { get; set; }
}

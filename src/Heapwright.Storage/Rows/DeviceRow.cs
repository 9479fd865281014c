namespace Heapwright.Storage.Rows;

/// <summary>The row of a device that may send entries.</summary>
public sealed class DeviceRow
{
    /// <summary>Which.</summary>
    public Guid Id { get; set; }

    /// <summary>What people call it.</summary>
    public string Name { get; set; } = "";

    /// <summary>The hash of its token, in hexadecimal digits; the token itself is kept nowhere.</summary>
    public string TokenSha256 { get; set; } = "";

    /// <summary>When it was named, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>Since when it may not send any more, in ISO 8601; null while it may.</summary>
    public string? RevokedAtUtc { get; set; }
}

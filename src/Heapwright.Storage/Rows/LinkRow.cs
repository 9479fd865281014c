namespace Heapwright.Storage.Rows;

/// <summary>The row of a secret address.</summary>
public sealed class LinkRow
{
    /// <summary>Which.</summary>
    public Guid Id { get; set; }

    /// <summary>What it is for: calendar or share.</summary>
    public string Purpose { get; set; } = "";

    /// <summary>The heap it shows; null for the yard.</summary>
    public Guid? HeapId { get; set; }

    /// <summary>The hash of its token, in hexadecimal digits; the token itself is kept nowhere.</summary>
    public string TokenSha256 { get; set; } = "";

    /// <summary>When it was made, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>When it ends, in ISO 8601; null for never.</summary>
    public string? ExpiresAtUtc { get; set; }

    /// <summary>Since when it is taken back, in ISO 8601; null while it is not.</summary>
    public string? RevokedAtUtc { get; set; }
}

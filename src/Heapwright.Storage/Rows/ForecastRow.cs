namespace Heapwright.Storage.Rows;

/// <summary>The row of a forecast as it was made.</summary>
public sealed class ForecastRow
{
    /// <summary>Its place among all.</summary>
    public long Position { get; set; }

    /// <summary>Which.</summary>
    public Guid Id { get; set; }

    /// <summary>The heap.</summary>
    public Guid HeapId { get; set; }

    /// <summary>When it was made, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>How many entries the diary had.</summary>
    public long Entries { get; set; }

    /// <summary>The hash of its question, in hexadecimal digits.</summary>
    public string QuestionSha256 { get; set; } = "";

    /// <summary>The version of the engine.</summary>
    public string Engine { get; set; } = "";

    /// <summary>The fingerprint of the data.</summary>
    public string Data { get; set; } = "";

    /// <summary>The present it was made for, days since building.</summary>
    public double FromDay { get; set; }

    /// <summary>How many readings it was fitted to.</summary>
    public int ReadingsUsed { get; set; }

    /// <summary>What is advised.</summary>
    public string StepJson { get; set; } = "{}";

    /// <summary>In what share of the cases that serves better than waiting, 0 to 1; null where it cannot be told.</summary>
    public double? ChanceBetter { get; set; }

    /// <summary>The latest reading: day, then low, typical and high of what was expected and what was read, °C; null for none.</summary>
    public string? LatestJson { get; set; }

    /// <summary>The reasons not to lean on it, with spaces between.</summary>
    public string Stale { get; set; } = "";

    /// <summary>The core ahead: lists of day and the five shares, °C.</summary>
    public string CourseJson { get; set; } = "[]";
}

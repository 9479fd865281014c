using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace Heapwright.App.Backups;

/// <summary>The list of contents of a backup: <c>manifest.json</c> in its zip.</summary>
public sealed record BackupManifest
{
    /// <summary>What <see cref="What"/> says.</summary>
    public const string Mark = "heapwright-backup";

    /// <summary>The form of this list.</summary>
    public const int CurrentForm = 1;

    /// <summary>Marks the file as a backup of this program.</summary>
    public required string What { get; init; }

    /// <summary>The form of this list.</summary>
    public required int Form { get; init; }

    /// <summary>The number of the form its database has.</summary>
    public required int Schema { get; init; }

    /// <summary>The version of the program that made it.</summary>
    public required string Engine { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>Why it was made.</summary>
    public required BackupKind Kind { get; init; }

    /// <summary>Its parts.</summary>
    public required ImmutableArray<BackupPart> Parts { get; init; }

    /// <summary>How it is written.</summary>
    public static JsonSerializerOptions Json { get; } = Options();

    private static JsonSerializerOptions Options()
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            AllowDuplicateProperties = false,
            WriteIndented = true,
            MaxDepth = 10,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower));
        options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}

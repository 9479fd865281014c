using System.Collections.Frozen;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace Heapwright.App.Sites;

/// <summary>The kinds of things a site keeps, and how each is written: in exports, and in the record of changes.</summary>
public static class ItemKinds
{
    private static readonly (string Kind, Type Type)[] Kinds =
    [
        ("site", typeof(Site)),
        ("container", typeof(OwnContainer)),
        ("bay", typeof(Bay)),
        ("material", typeof(OwnMaterial)),
        ("measurement", typeof(Measurement)),
        ("stock", typeof(StockEntry)),
        ("recipe", typeof(SavedRecipe)),
        ("sheet", typeof(SavedSheet)),
        ("heap", typeof(KeptHeap)),
        ("lesson", typeof(KeptLesson)),
    ];

    private static readonly FrozenDictionary<Type, string> KindOf = Kinds.ToFrozenDictionary(
        k => k.Type,
        k => k.Kind
    );

    private static readonly FrozenDictionary<string, Type> TypeOf = Kinds.ToFrozenDictionary(
        k => k.Kind,
        k => k.Type,
        StringComparer.Ordinal
    );

    /// <summary>How things are written: field names with their unit, times in ISO 8601, unknown fields refused.</summary>
    public static JsonSerializerOptions Json { get; } = Options();

    /// <summary>All kinds, in the order in which an import must bring them.</summary>
    public static IEnumerable<string> All => Kinds.Select(k => k.Kind);

    /// <summary>The kind of a thing.</summary>
    /// <param name="item">The thing.</param>
    public static string Of(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return KindOf[item.GetType()];
    }

    /// <summary>The kind of a type of things.</summary>
    /// <typeparam name="T">The type.</typeparam>
    public static string Of<T>()
        where T : Item => KindOf[typeof(T)];

    /// <summary>The type behind a kind.</summary>
    /// <param name="kind">The kind.</param>
    public static Type Type(string kind) => TypeOf[kind];

    /// <summary>A thing as JSON; equal things give equal text.</summary>
    /// <param name="item">The thing.</param>
    public static string Write(Item item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return JsonSerializer.Serialize(item, item.GetType(), Json);
    }

    /// <summary>A thing from JSON.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="json">The JSON, as <see cref="Write"/> made it.</param>
    /// <exception cref="JsonException">The text is not such a thing.</exception>
    public static Item Read(string kind, string json) =>
        (Item?)JsonSerializer.Deserialize(json, TypeOf[kind], Json)
        ?? throw new JsonException("null is no " + kind);

    private static JsonSerializerOptions Options()
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            AllowDuplicateProperties = false,
            MaxDepth = 40,
        };
        options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }
}

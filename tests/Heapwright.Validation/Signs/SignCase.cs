using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Validation.Signs;

/// <summary>A case written by hand, with what a very experienced neighbour would say.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Question">The question of <c>diagnose</c>.</param>
/// <param name="First">Causes that are right as the first.</param>
/// <param name="WithinTwo">Causes of which one must be among the first two.</param>
/// <param name="Wrong">Causes that are plainly wrong as the first.</param>
/// <param name="Healthy">Whether nothing needs changing; null where nobody would say.</param>
internal sealed record SignCase(
    string Id,
    JsonObject Question,
    string[] First,
    string[] WithinTwo,
    string[] Wrong,
    bool? Healthy
)
{
    /// <summary>The cases written by hand.</summary>
    public static IReadOnlyList<SignCase> Written { get; } =
    [
        .. Items("written-cases.json", "cases")
            .Select(c => new SignCase(
                c["id"]!.GetValue<string>(),
                c["question"]!.AsObject(),
                Words(c["first"]),
                Words(c["within_two"]),
                Words(c["wrong"]),
                c["healthy"]?.GetValue<bool>()
            )),
    ];

    /// <summary>The rows of published tables; their cause must be among the first two.</summary>
    public static IReadOnlyList<SignCase> Rows { get; } =
    [
        .. Items("table-rows.json", "rows")
            .Select(
                (c, at) =>
                    new SignCase(
                        $"row {c["row"]} ({at})",
                        c["question"]!.AsObject(),
                        [],
                        Words(c["causes"]),
                        [],
                        null
                    )
            ),
    ];

    /// <summary>Cases that contradict themselves or make no sense.</summary>
    public static IReadOnlyList<JsonObject> Nonsense { get; } =
    [.. Items("nonsense.json", "cases")];

    /// <summary>The answer to a question.</summary>
    public static JsonObject Answer(JsonObject question) =>
        DiagnoseAnswers
            .Answer(Input.Read(Encoding.UTF8.GetBytes(question.ToJsonString()), "case"))
            .Json;

    private static IEnumerable<JsonObject> Items(string file, string list)
    {
        using var stream =
            typeof(SignCase).Assembly.GetManifestResourceStream(file)
            ?? throw new FileNotFoundException(file);
        return [.. JsonNode.Parse(stream)![list]!.AsArray().Select(c => c!.AsObject())];
    }

    private static string[] Words(JsonNode? list) =>
        [.. list!.AsArray().Select(w => w!.GetValue<string>())];
}

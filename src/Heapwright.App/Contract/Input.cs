using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>One value of a question in JSON, with its place, read strictly: whatever is not understood is refused.</summary>
public sealed class Input
{
    /// <summary>The largest question that is read, in bytes.</summary>
    public const int LargestBytes = 1 << 20;

    private const int DeepestNesting = 32;

    private readonly JsonElement element;

    private Input(JsonElement element, string file, string place)
    {
        this.element = element;
        File = file;
        Place = place;
    }

    /// <summary>The file, or another name for where the question came from.</summary>
    public string File { get; }

    /// <summary>The place of this value, such as <c>ingredients[1].amount</c>.</summary>
    public string Place { get; }

    /// <summary>Whether the value is a JSON object.</summary>
    public bool IsObject => element.ValueKind == JsonValueKind.Object;

    /// <summary>Whether the value is a JSON array.</summary>
    public bool IsArray => element.ValueKind == JsonValueKind.Array;

    /// <summary>Whether the value is text.</summary>
    public bool IsText => element.ValueKind == JsonValueKind.String;

    /// <summary>Whether the value is null.</summary>
    public bool IsNull => element.ValueKind == JsonValueKind.Null;

    /// <summary>The value as it was written.</summary>
    internal string Raw() => element.GetRawText();

    /// <summary>Whether an object has a field of this name that is not null; false where this is no object.</summary>
    /// <param name="name">The field.</param>
    public bool Has(string name) =>
        IsObject
        && element.TryGetProperty(name, out var value)
        && value.ValueKind != JsonValueKind.Null;

    /// <summary>A whole question that was made here.</summary>
    /// <param name="json">The question.</param>
    /// <param name="name">The name to use in messages.</param>
    /// <exception cref="InputProblem">As <see cref="Read"/>.</exception>
    public static Input Of(JsonNode json, string name)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Read(Encoding.UTF8.GetBytes(json.ToJsonString()), name);
    }

    /// <summary>Reads a whole question.</summary>
    /// <param name="utf8">The bytes of one JSON document.</param>
    /// <param name="file">The name to use in messages.</param>
    /// <exception cref="InputProblem">Not a JSON document, not Unicode, too large, or a field stands twice.</exception>
    public static Input Read(ReadOnlyMemory<byte> utf8, string file)
    {
        if (utf8.Length > LargestBytes)
        {
            throw new InputProblem(
                file,
                "",
                $"has {utf8.Length} bytes; at most {LargestBytes} are read"
            );
        }

        if (utf8.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            utf8 = utf8[3..];
        }

        try
        {
            CheckLetters(utf8.Span, file);
            var document = JsonDocument.Parse(
                utf8,
                new JsonDocumentOptions
                {
                    MaxDepth = DeepestNesting,
                    AllowDuplicateProperties = false,
                }
            );
            return new Input(document.RootElement, file, "");
        }
        catch (JsonException problem)
        {
            throw new InputProblem(file, "", JsonFault.Said(problem, DeepestNesting));
        }
    }

    /// <summary>The fields of an object, all of whose names are known.</summary>
    /// <param name="known">The names that may stand here.</param>
    /// <exception cref="InputProblem">Not an object, or it has an unknown field.</exception>
    public InputFields Fields(params ReadOnlySpan<string> known)
    {
        if (!IsObject)
        {
            throw Problem($"{Found()} was found; an object with {List(known)} is needed");
        }

        var fields = new Dictionary<string, Input>(StringComparer.Ordinal);
        foreach (var property in element.EnumerateObject())
        {
            if (!known.Contains(property.Name))
            {
                throw Problem(
                    $"the field \"{Short(property.Name)}\" is not known; the nearest is \"{Nearest.Of(property.Name, known)}\" (known: {List(known)})"
                );
            }

            fields[property.Name] = Child(property.Value, property.Name);
        }

        return new InputFields(this, fields);
    }

    /// <summary>The items of an array.</summary>
    /// <param name="fewest">The fewest items allowed.</param>
    /// <param name="most">The most items allowed.</param>
    /// <exception cref="InputProblem">Not an array, or too few or too many items.</exception>
    public IReadOnlyList<Input> Items(int fewest, int most)
    {
        if (!IsArray)
        {
            throw Problem($"{Found()} was found; a list is needed");
        }

        var count = element.GetArrayLength();
        if (count < fewest || count > most)
        {
            throw Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"has {count} {(count == 1 ? "entry" : "entries")}; {(fewest == most ? "exactly" : $"{fewest} to")} {most} are allowed"
                )
            );
        }

        var items = new List<Input>(count);
        foreach (var item in element.EnumerateArray())
        {
            items.Add(
                new Input(
                    item,
                    File,
                    string.Create(CultureInfo.InvariantCulture, $"{Place}[{items.Count}]")
                )
            );
        }

        return items;
    }

    /// <summary>A plain number.</summary>
    /// <param name="lowest">The lowest value allowed.</param>
    /// <param name="highest">The highest value allowed.</param>
    /// <exception cref="InputProblem">Not a finite number within the range.</exception>
    public double Number(double lowest, double highest)
    {
        var isNumber = element.ValueKind == JsonValueKind.Number;
        var value = double.NaN;
        if (!isNumber || !element.TryGetDouble(out value) || !double.IsFinite(value))
        {
            throw Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Found()} is {(isNumber ? "out of range" : "not a number")}; {lowest} to {highest} is allowed"
                )
            );
        }

        if (value < lowest || value > highest)
        {
            throw Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{value} is out of range; {lowest} to {highest} is allowed"
                )
            );
        }

        return value;
    }

    /// <summary>A whole number.</summary>
    /// <param name="lowest">The lowest value allowed.</param>
    /// <param name="highest">The highest value allowed.</param>
    /// <exception cref="InputProblem">Not a whole number within the range.</exception>
    public int Whole(int lowest, int highest)
    {
        var value = Number(lowest, highest);
        if (value != Math.Floor(value))
        {
            throw Problem(
                string.Create(CultureInfo.InvariantCulture, $"{value} is not a whole number")
            );
        }

        return (int)value;
    }

    /// <summary>A number, or a range with low, typical and high.</summary>
    /// <param name="lowest">The lowest value allowed for any of the three.</param>
    /// <param name="highest">The highest value allowed for any of the three.</param>
    /// <exception cref="InputProblem">Neither a number nor an ordered range within the bounds.</exception>
    public Spread Spread(double lowest, double highest)
    {
        if (!IsObject)
        {
            if (element.ValueKind != JsonValueKind.Number)
            {
                throw Problem(
                    $"{Found()} was found; a number or a range such as {{\"low\": 1, \"typical\": 2, \"high\": 3}} is needed"
                );
            }

            return Core.Quantities.Spread.Exact(Number(lowest, highest));
        }

        var fields = Fields("low", "typical", "high");
        var low = fields.Needed("low").Number(lowest, highest);
        var typical = fields.Needed("typical").Number(lowest, highest);
        var high = fields.Needed("high").Number(lowest, highest);
        if (low > typical || typical > high)
        {
            throw Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"low {low}, typical {typical}, high {high} are not in ascending order"
                )
            );
        }

        return Core.Quantities.Spread.Of(low, typical, high);
    }

    /// <summary>A short text.</summary>
    /// <param name="longest">The most characters allowed.</param>
    /// <exception cref="InputProblem">Not a text, empty or too long.</exception>
    public string Text(int longest = 200)
    {
        if (!IsText)
        {
            throw Problem($"{Found()} was found; a text is needed");
        }

        var text = element.GetString()!.Trim();
        if (text.Length == 0 || text.Length > longest)
        {
            throw Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the text has {text.Length} characters; 1 to {longest} are allowed"
                )
            );
        }

        return text;
    }

    /// <summary>One of a few words.</summary>
    /// <param name="allowed">The words.</param>
    /// <exception cref="InputProblem">Another word, or no text.</exception>
    public string Choice(params ReadOnlySpan<string> allowed)
    {
        var word = IsText ? element.GetString()! : "";
        if (!allowed.Contains(word))
        {
            throw Problem(
                $"{Found()} is not allowed; {List(allowed)} is, the nearest being \"{Nearest.Of(word, allowed)}\""
            );
        }

        return word;
    }

    /// <summary>True or false.</summary>
    /// <exception cref="InputProblem">Neither true nor false.</exception>
    public bool YesNo() =>
        element.ValueKind switch
        {
            JsonValueKind.True => true,
            JsonValueKind.False => false,
            _ => throw Problem($"{Found()} was found; true or false is needed"),
        };

    /// <summary>A problem at this place.</summary>
    /// <param name="sentence">What was found and what is allowed.</param>
    public InputProblem Problem(string sentence) => new(File, Place, sentence);

    /// <summary>The value as it stands, shortened, for a message.</summary>
    public string Found() =>
        element.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "a list",
            JsonValueKind.Null => "null",
            _ => Short(element.GetRawText()),
        };

    /// <summary>The names of all fields of an object whose names are free, such as the containers.</summary>
    /// <param name="most">The most fields allowed.</param>
    /// <exception cref="InputProblem">Not an object, or too many fields.</exception>
    public IReadOnlyList<(string Name, Input Value)> Named(int most)
    {
        if (!IsObject)
        {
            throw Problem($"{Found()} was found; an object is needed");
        }

        var all = new List<(string, Input)>();
        foreach (var property in element.EnumerateObject())
        {
            if (all.Count == most)
            {
                throw Problem(
                    string.Create(CultureInfo.InvariantCulture, $"has more than {most} fields")
                );
            }

            all.Add((property.Name, Child(property.Value, property.Name)));
        }

        return all;
    }

    // The parser finds bytes and escapes that are no letters only where a text is used; they are refused at the border.
    private static void CheckLetters(ReadOnlySpan<byte> utf8, string file)
    {
        if (!Utf8.IsValid(utf8))
        {
            throw new InputProblem(file, "", "is not text in UTF-8; save it as UTF-8");
        }

        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = DeepestNesting });
        while (reader.Read())
        {
            if (!reader.ValueIsEscaped)
            {
                continue;
            }

            try
            {
                reader.GetString();
            }
            catch (InvalidOperationException)
            {
                var before = utf8[..(int)reader.TokenStartIndex];
                var line = before.Count((byte)'\n') + 1;
                var column = before.Length - before.LastIndexOf((byte)'\n');
                throw new InputProblem(
                    file,
                    "",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"holds half of a letter written as \\u and four digits (line {line}, column {column}); both halves are needed"
                    )
                );
            }
        }
    }

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";

    private static string List(ReadOnlySpan<string> words) => string.Join(", ", words.ToArray());

    private Input Child(JsonElement value, string name) =>
        new(value, File, Place.Length == 0 ? Short(name) : $"{Place}.{Short(name)}");
}

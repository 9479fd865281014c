namespace Heapwright.App.Contract;

/// <summary>The fields of an object in a question; a field that is null counts as absent unless asked for by name.</summary>
public sealed class InputFields
{
    private readonly Dictionary<string, Input> fields;

    internal InputFields(Input owner, Dictionary<string, Input> fields)
    {
        Owner = owner;
        this.fields = fields;
    }

    /// <summary>The object itself.</summary>
    public Input Owner { get; }

    /// <summary>A field, or null where it is absent or null.</summary>
    /// <param name="name">The name.</param>
    public Input? this[string name] =>
        fields.TryGetValue(name, out var value) && !value.IsNull ? value : null;

    /// <summary>Whether the field stands there and is null.</summary>
    /// <param name="name">The name.</param>
    public bool IsNull(string name) => fields.TryGetValue(name, out var value) && value.IsNull;

    /// <summary>A field that must be there.</summary>
    /// <param name="name">The name.</param>
    /// <exception cref="InputProblem">It is absent.</exception>
    public Input Needed(string name) =>
        this[name] ?? throw Owner.Problem($"the field \"{name}\" is missing; it is needed");

    /// <summary>Refuses fields that belong to another deed than the one that is told.</summary>
    /// <param name="deed">The deed.</param>
    /// <param name="own">Its fields.</param>
    /// <param name="all">The fields of all deeds.</param>
    /// <exception cref="InputProblem">A field of another deed stands there.</exception>
    public void OnlyOf(string deed, IReadOnlyList<string> own, IEnumerable<string> all)
    {
        foreach (var name in all.Except(own, StringComparer.Ordinal))
        {
            if (this[name] is { } stranger)
            {
                throw stranger.Problem(
                    own.Count == 0
                        ? $"\"{deed}\" has no {name}, nor any other field"
                        : $"\"{deed}\" has no {name}; it has {string.Join(", ", own)}"
                );
            }
        }
    }
}

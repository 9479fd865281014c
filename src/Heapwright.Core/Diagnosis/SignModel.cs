using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// The causes, how often each holds, and the fields of signs: the whole of what is known beforehand. Every state of a
/// heap is a stage, a class of heat at the core, and up to three faults or growths at once.
/// </summary>
public sealed class SignModel
{
    /// <summary>The name of the stage in which a heap does not heat although it should; no cause in itself.</summary>
    public const string Stalled = "stalled";

    /// <summary>The field of stages.</summary>
    internal const string StageField = "stage";

    /// <summary>The field of classes of heat.</summary>
    internal const string HeatField = "heat";

    /// <summary>The field of how many faults hold at once.</summary>
    internal const string TogetherField = "faults_at_once";

    private readonly Dictionary<string, SignField> fields;
    private readonly Dictionary<string, int> givens = new(StringComparer.Ordinal);
    private readonly Lazy<HeapStates> states;
    private readonly Lazy<StateRoles> roles;
    private readonly Lazy<CauseChances> usual;

    /// <summary>Makes the model of its tables.</summary>
    /// <param name="causes">The causes.</param>
    /// <param name="rows">The rows of signs.</param>
    /// <param name="clashes">Words that cannot both be right.</param>
    /// <exception cref="InvalidOperationException">A row names a cause or a word that does not exist.</exception>
    public SignModel(
        ImmutableArray<HeapCause> causes,
        IReadOnlyList<SignRow> rows,
        ImmutableArray<SignClash> clashes
    )
    {
        Causes = causes;
        Clashes = clashes;
        foreach (var cause in causes)
        {
            givens[cause.Id] = givens.Count;
        }

        givens[Stalled] = givens.Count;
        foreach (var heat in rows.Where(r => r.Field == HeatField && r.Effect == SignEffect.Often))
        {
            givens["heat:" + heat.Word] = givens.Count;
        }

        fields = rows.GroupBy(r => r.Field, StringComparer.Ordinal)
            .ToDictionary(
                g => g.Key,
                g => new SignField(g.Key, [.. g], givens),
                StringComparer.Ordinal
            );
        states = new(() => new HeapStates(this));
        roles = new(() => StateRoles.Of(this));
        usual = new(() => CauseChances.Of(this, States.Chances));
    }

    /// <summary>The causes, in the order of the table.</summary>
    public ImmutableArray<HeapCause> Causes { get; }

    /// <summary>Words that cannot both be right.</summary>
    public ImmutableArray<SignClash> Clashes { get; }

    /// <summary>Words that say nearly the same.</summary>
    public ImmutableArray<SameSign> Same { get; init; } = [];

    /// <summary>All fields, the hidden ones too.</summary>
    public IEnumerable<SignField> Fields => fields.Values;

    /// <summary>Every state that is reckoned with, and how often it is met.</summary>
    internal HeapStates States => states.Value;

    /// <summary>The chance of each cause before anything is told.</summary>
    internal CauseChances UsualChances => usual.Value;

    /// <summary>What each cause says of a healthy heap.</summary>
    internal StateRoles Roles => roles.Value;

    /// <summary>A field by its id.</summary>
    /// <param name="id">The id.</param>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public SignField Field(string id) => fields[id];

    /// <summary>A field, or null.</summary>
    /// <param name="id">The id.</param>
    public SignField? TryField(string id) => fields.GetValueOrDefault(id);

    /// <summary>How many things may hold: causes, the stalled stage, classes of heat.</summary>
    internal int GivenCount => givens.Count;

    /// <summary>The place of a cause, of the stalled stage or of a class of heat among all that may hold.</summary>
    internal int Given(string id) => givens[id];
}

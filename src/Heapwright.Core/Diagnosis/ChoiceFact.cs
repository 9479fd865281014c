namespace Heapwright.Core.Diagnosis;

/// <summary>What was answered in a field with one answer; a number lies between words and belongs to each in part.</summary>
public sealed class ChoiceFact : SignFact
{
    private readonly SignField field;
    private readonly double[] shares;

    /// <summary>A word.</summary>
    /// <param name="field">The field.</param>
    /// <param name="word">One of its words.</param>
    public ChoiceFact(SignField field, string word)
        : this(field, word, Only(field, word)) { }

    /// <summary>A value between words.</summary>
    /// <param name="field">The field.</param>
    /// <param name="said">What was said.</param>
    /// <param name="shares">How much it belongs to each word of the field.</param>
    public ChoiceFact(SignField field, string said, double[] shares)
        : base(field?.Id ?? "", said)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(shares);
        if (shares.Length != field.Words.Length)
        {
            throw new ArgumentException(field.Id + ": a share for each word", nameof(shares));
        }

        (this.field, this.shares) = (field, shares);
    }

    /// <inheritdoc/>
    public override IEnumerable<string> SourcesFor(string cause) =>
        field.Words.Where((_, w) => shares[w] > 0.3).SelectMany(w => field.SourcesOf(w, cause));

    internal override bool DependsOn(int given) => field.DependsOn(given);

    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        Span<double> chances = stackalloc double[shares.Length];
        field.Chances(holding, chances);
        var sum = 0.0;
        for (var w = 0; w < shares.Length; w++)
        {
            sum += chances[w] * shares[w];
        }

        return sum;
    }

    private static double[] Only(SignField field, string word)
    {
        ArgumentNullException.ThrowIfNull(field);
        var only = new double[field.Words.Length];
        only[field.Words.IndexOf(word)] = 1;
        return only;
    }
}

namespace Heapwright.Core.Diagnosis;

/// <summary>Something that is known of a heap, and how likely it is in each state.</summary>
/// <param name="place">Where it stands in the question, such as <c>signs.smell</c>.</param>
/// <param name="word">What stands there.</param>
public abstract class SignFact(string place, string word)
{
    /// <summary>Where it stands in the question.</summary>
    public string Place { get; } = place;

    /// <summary>What stands there.</summary>
    public string Word { get; } = word;

    /// <summary>Whether it says that something is not there.</summary>
    public virtual bool IsAbsence => false;

    /// <summary>The publications that connect it with a cause.</summary>
    /// <param name="cause">The cause.</param>
    public virtual IEnumerable<string> SourcesFor(string cause) => [];

    /// <summary>Whether it is likelier or less likely where this holds.</summary>
    internal abstract bool DependsOn(int given);

    /// <summary>How likely it is where these hold.</summary>
    /// <param name="holding">Indices of givens, negative for none.</param>
    internal abstract double Likelihood(ReadOnlySpan<sbyte> holding);
}

using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Arguments;

/// <summary>The arguments, sorted into words and options; not yet held against a command.</summary>
internal sealed record ParsedArguments
{
    /// <summary>What is not an option, in order.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>The options that were given, in order, as known names such as <c>--input</c>.</summary>
    public ImmutableArray<string> Given { get; init; } = [];

    /// <summary>The value of <c>--input</c>; <c>-</c> is standard input.</summary>
    public string? Input { get; init; }

    /// <summary>The value of <c>--svg</c>.</summary>
    public string? Svg { get; init; }

    /// <summary>The value of <c>--pdf</c>.</summary>
    public string? Pdf { get; init; }

    /// <summary>The value of <c>--paper</c>: a4 or letter.</summary>
    public string? Paper { get; init; }

    /// <summary>The value of <c>--seed</c>.</summary>
    public ulong? Seed { get; init; }

    /// <summary>The value of <c>--units</c>, or of HEAPWRIGHT_UNITS where the option was not given.</summary>
    public Measures? Measures { get; init; }

    /// <summary>The values of <c>--process</c>, <c>--country</c>, <c>--rules</c> and <c>--solids</c>.</summary>
    public HygieneOptions Hygiene { get; init; } = HygieneOptions.None;

    /// <summary>The values of the options of the diary, by name.</summary>
    public ImmutableDictionary<string, string> Values { get; init; } =
        ImmutableDictionary<string, string>.Empty;

    /// <summary>Whether <c>--preview</c> was given.</summary>
    public bool Preview { get; init; }

    /// <summary>Whether <c>--keep</c> was given.</summary>
    public bool Keep { get; init; }

    /// <summary>Whether <c>--forget</c> was given.</summary>
    public bool Forget { get; init; }

    /// <summary>Whether <c>--json</c> was given.</summary>
    public bool Json { get; init; }

    /// <summary>Whether <c>--help</c> was given.</summary>
    public bool Help { get; init; }

    /// <summary>Whether <c>--version</c> was given.</summary>
    public bool Version { get; init; }
}

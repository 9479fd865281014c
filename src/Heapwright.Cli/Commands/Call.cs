using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Cli.Arguments;
using Heapwright.Cli.Files;

namespace Heapwright.Cli.Commands;

/// <summary>What was asked, for the command that answers it.</summary>
internal sealed class Call
{
    private readonly ParsedArguments parsed;
    private readonly ITerminal terminal;
    private readonly Command command;

    /// <summary>A call of a command.</summary>
    /// <param name="command">The command.</param>
    /// <param name="words">The words after its name.</param>
    /// <param name="parsed">The options.</param>
    /// <param name="terminal">Where standard input is.</param>
    public Call(
        Command command,
        ImmutableArray<string> words,
        ParsedArguments parsed,
        ITerminal terminal
    )
    {
        this.command = command;
        this.parsed = parsed;
        this.terminal = terminal;
        Words = words;
    }

    /// <summary>The words after the name of the command.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>The measures of the sentences: those asked for in text, metric in JSON.</summary>
    public Measures Measures => parsed.Json ? Measures.Metric : Drawn;

    /// <summary>The measures of a drawing, whatever form the answer has.</summary>
    public Measures Drawn => parsed.Measures ?? Measures.Metric;

    /// <summary>The time at which it was asked.</summary>
    public DateTimeOffset Now => terminal.Now;

    /// <summary>The seed asked for, or null.</summary>
    public ulong? Seed => parsed.Seed;

    /// <summary>Whether the answer is wanted as JSON.</summary>
    public bool Json => parsed.Json;

    /// <summary>Whether only a look was asked for.</summary>
    public bool Preview => parsed.Preview;

    /// <summary>Whether what was found is to be kept.</summary>
    public bool Keep => parsed.Keep;

    /// <summary>Whether what was kept is to be kept no longer.</summary>
    public bool Forget => parsed.Forget;

    /// <summary>The value of an option; null if it was not given.</summary>
    /// <param name="option">The option.</param>
    public string? Value(string option) => parsed.Values.GetValueOrDefault(option);

    /// <summary>Whether a question was given.</summary>
    public bool HasQuestion => parsed.Input is not null;

    /// <summary>A variable of the environment; null or empty if it is not set.</summary>
    /// <param name="name">Its name.</param>
    public string? Variable(string name) => terminal.Variable(name);

    /// <summary>Tells how far the work is, on standard error.</summary>
    /// <param name="line">The line.</param>
    public void Tell(string line) => terminal.Complain(line);

    /// <summary>Standard input.</summary>
    public Stream OpenInput() => terminal.OpenInput();

    /// <summary>The paper asked for: <c>a4</c> or <c>letter</c>.</summary>
    public string Paper => parsed.Paper ?? "a4";

    /// <summary>What was said beside a record of heat.</summary>
    public HygieneOptions Hygiene => parsed.Hygiene;

    /// <summary>The bytes of a question that may be no JSON, named by <c>--input</c> or as a word, and its name in messages.</summary>
    /// <exception cref="InputProblem">It was not named or cannot be read.</exception>
    public (ReadOnlyMemory<byte> Bytes, string Name) Record() =>
        QuestionFile.Read(parsed.Input ?? Words.FirstOrDefault() ?? throw Missing(), terminal);

    /// <summary>Reads the question named by <c>--input</c>.</summary>
    /// <exception cref="InputProblem">It was not named, cannot be read, or is no JSON document.</exception>
    public Input Question()
    {
        if (parsed.Input is null)
        {
            throw Missing();
        }

        var (bytes, name) = QuestionFile.Read(parsed.Input, terminal);
        var question = Input.Read(bytes, name);
        if (Seed is not null && question.Has("seed"))
        {
            throw new InputProblem(name, "seed", App.Texts.Words.Of("cli.seed_twice"));
        }

        return question;
    }

    private InputProblem Missing() =>
        new(command.Name, "", App.Texts.Words.Of("cli.input_missing", null, command.Name));

    /// <summary>The question as it stands, checked to be one JSON document.</summary>
    /// <exception cref="InputProblem">It was not named, cannot be read, or is no JSON document.</exception>
    public System.Text.Json.JsonElement QuestionText()
    {
        var (bytes, name) = QuestionFile.Read(parsed.Input!, terminal);
        Input.Read(bytes, name);
        using var document = System.Text.Json.JsonDocument.Parse(
            bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes
        );
        return document.RootElement.Clone();
    }
}

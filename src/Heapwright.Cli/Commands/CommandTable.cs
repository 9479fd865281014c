using System.Collections.Immutable;
using System.Text;
using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Drawings;
using Heapwright.App.Paper;
using Heapwright.Cli.Files;

namespace Heapwright.Cli.Commands;

/// <summary>Every question that the command line can ask, in the order of the help. A new one is one entry here.</summary>
internal static class CommandTable
{
    /// <summary>The commands.</summary>
    public static ImmutableArray<Command> All { get; } =
    [
        new("materials list", call => MaterialText.Of(MaterialAnswers.List(), call.Measures)),
        new(
            "materials search",
            call =>
                MaterialText.Of(MaterialAnswers.Search(string.Join(' ', call.Words)), call.Measures)
        )
        {
            WordsAre = "TEXT",
        },
        new(
            "materials show",
            call =>
                MaterialText.Of(MaterialAnswers.Show(string.Join(' ', call.Words)), call.Measures)
        )
        {
            WordsAre = "ID",
        },
        new(
            "materials guess",
            call => MaterialText.Of(MaterialAnswers.Guess(call.Question()), call.Measures)
        )
        {
            TakesInput = true,
        },
        new("mix", call => MixAnswers.Answer(call.Question(), call.Seed, call.Measures))
        {
            TakesInput = true,
            Samples = true,
        },
        new("solve", call => SolveAnswers.Answer(call.Question(), call.Measures))
        {
            TakesInput = true,
        },
        new("recipe", call => RecipeAnswers.Answer(call.Question(), call.Seed, call.Measures))
        {
            TakesInput = true,
            Samples = true,
        },
        new("build", Build) { TakesInput = true, Draws = true },
        new("simulate", Simulate) { TakesInput = true, Samples = true },
        new("forecast", Forecast) { TakesInput = true, Samples = true },
        new("diagnose", call => DiagnoseAnswers.Answer(call.Question(), call.Measures))
        {
            TakesInput = true,
        },
        new("hygiene", Hygiene)
        {
            TakesInput = true,
            TakesRecord = true,
            Prints = true,
        },
        new("finish", call => FinishAnswers.Answer(call.Question(), call.Seed, call.Measures))
        {
            TakesInput = true,
            Samples = true,
        },
    ];

    private static Reply Forecast(Call call) =>
        ForecastAnswers.Answer(
            call.Question(),
            SimulateLimits.CommandLine(TableFile.Read),
            call.Seed,
            call.Measures
        );

    private static Reply Simulate(Call call) =>
        SimulateAnswers.Answer(
            call.Question(),
            SimulateLimits.CommandLine(TableFile.Read),
            call.Seed,
            call.Measures
        );

    private static Reply Hygiene(Call call)
    {
        var (bytes, name) = call.Record();
        var answer = HygieneAnswers.Answer(bytes, name, call.Hygiene, call.Measures);
        return new Reply(answer.Answer)
        {
            Pdf = () => answer.Pdf(PaperWords.Of(call.Paper), call.Now, call.Drawn),
        };
    }

    private static Reply Build(Call call)
    {
        var question = call.Question();
        return new Reply(BuildAnswers.Answer(question, call.Measures))
        {
            Svg = () =>
                Encoding.UTF8.GetBytes(HeapSvg.Of(BuildAnswers.Sheet(question, call.Drawn))),
            Pdf = () =>
                BuildSheetPdf.Render(
                    BuildAnswers.Sheet(question, call.Drawn),
                    PaperWords.Of(call.Paper),
                    call.Now
                ),
        };
    }
}

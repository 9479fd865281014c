using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using Heapwright.App.BuildSheets;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Proving;

/// <summary>Reads a record of heat from a form, pasted or as a file, and asks <c>hygiene</c> of it.</summary>
internal static class HeatProofForm
{
    /// <summary>The codes of the countries that have rules.</summary>
    public static IEnumerable<string> Countries => HygieneRuleReader.Countries;

    /// <summary>Asks what a record shows.</summary>
    /// <param name="form">The form.</param>
    /// <param name="typed">Takes the reasons where it is refused.</param>
    /// <param name="show">How quantities are shown.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>The record as text, and the answer; no answer where it was refused.</returns>
    public static async Task<(string Log, JsonObject? Answer)> Ask(
        IFormCollection form,
        Posted typed,
        Shown show,
        CancellationToken stop
    )
    {
        var log = await Read(form, typed, stop);
        if (typed.IsRefused)
        {
            return (log, null);
        }

        var options = Options(log, form, typed, show.Culture);
        return (log, typed.IsRefused ? null : Answer(log, options, typed, show)?.Answer.Json);
    }

    /// <summary>The record for printing.</summary>
    /// <param name="context">The request.</param>
    /// <param name="form">The form.</param>
    /// <param name="here">The site.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancel">Ends the work.</param>
    public static async Task<IResult> Print(
        HttpContext context,
        IFormCollection form,
        Here here,
        TimeProvider clock,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        var typed = Posted.From(context);
        var log = form["log"].ToString();
        var options = Options(log, form, typed, here.Show.Culture);
        if (typed.IsRefused || Answer(log, options, typed, here.Show) is not { } answer)
        {
            return Results.LocalRedirect("/heat-proof");
        }

        var paper = PaperWords.Of(form["paper"]);
        return Results.File(
            answer.Pdf(paper, clock.GetUtcNow(), here.Show.Measures),
            "application/pdf",
            "proof-of-heat.pdf"
        );
    }

    // A file, where one was chosen, counts before what was pasted.
    private static async Task<string> Read(
        IFormCollection form,
        Posted typed,
        CancellationToken stop
    )
    {
        var file = form.Files.GetFile("file");
        if (file is null || file.Length == 0)
        {
            var pasted = form["log"].ToString();
            if (string.IsNullOrWhiteSpace(pasted))
            {
                typed.Refuse(Refusal.Of("log", "sites.heat_record_missing"));
            }

            return pasted;
        }

        if (file.Length > Input.LargestBytes)
        {
            typed.Refuse(Refusal.Of("file", "sites.heat_record_large", Input.LargestBytes / 1024));
            return "";
        }

        using var buffer = new MemoryStream();
        await file.CopyToAsync(buffer, stop);
        if (!Utf8.IsValid(buffer.ToArray()))
        {
            typed.Refuse(Refusal.Of("file", "sites.heat_record_letters"));
            return "";
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    // A question in JSON says all this itself.
    private static HygieneOptions Options(
        string log,
        IFormCollection form,
        Posted typed,
        CultureInfo culture
    )
    {
        if (log.AsSpan().TrimStart().StartsWith('{'))
        {
            return HygieneOptions.None;
        }

        string Word(string name, IEnumerable<string> known, string usual) =>
            known.Contains(form[name].ToString(), StringComparer.Ordinal)
                ? form[name].ToString()
                : usual;
        double? solids = null;
        if (form["solids"].ToString().Trim() is { Length: > 0 } written)
        {
            if (NumberText.Read(written, "solids", culture, out var number) is { } wrong)
            {
                typed.Refuse(wrong);
            }
            else if (number is < 0.1 or > 100)
            {
                typed.Refuse(Refusal.Of("solids", "sites.heat_record_solids"));
            }
            else
            {
                solids = number;
            }
        }

        return new HygieneOptions(
            Word("process", HygieneRuleReader.ProcessWords, "bin"),
            Word("country", Countries, "") is { Length: > 0 } country ? country : null,
            null,
            solids
        );
    }

    private static HygieneAnswer? Answer(
        string log,
        HygieneOptions options,
        Posted typed,
        Shown show
    )
    {
        try
        {
            return HygieneAnswers.Answer(
                Encoding.UTF8.GetBytes(log),
                Say.Of("proof.record"),
                options,
                show.Measures
            );
        }
        catch (InputProblem problem)
        {
            typed.Refuse(Refusal.Of("log", "sites.question_wrong", problem.Message));
            return null;
        }
    }
}

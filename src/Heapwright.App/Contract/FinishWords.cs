using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Reasons;

namespace Heapwright.App.Contract;

/// <summary>The words of <c>finish</c>.</summary>
/// <param name="measures">The measures of its sentences.</param>
internal sealed class FinishWords(Measures measures)
{
    private static readonly string[] InDegrees = ["rise_c", "reheat_rise_c"];

    /// <summary>A sentence with its values.</summary>
    public string Say(string code, params object[] values) =>
        Words.Of("finish." + code, measures.Culture, values);

    /// <summary>The name of a scale.</summary>
    public string Scale(string id) => Say("scale_" + id);

    /// <summary>What a class means; the class alone where it says so itself.</summary>
    public string Class(string scale, string name) =>
        Words.TryOf($"finish.class_{scale}_{name}", measures.Culture)
        ?? Words.TryOf("finish.class_" + name, measures.Culture)
        ?? name;

    /// <summary>Where a scale comes from: in words of ours where it is no publication, else as it is cited.</summary>
    public string Source(CompostScale scale) =>
        Words.TryOf("finish.source_" + scale.Id) ?? scale.Citation;

    /// <summary>A value of a scale with its unit.</summary>
    public string Value(ScaleFinding finding) =>
        InDegrees.Contains(finding.Scale.Quantity, StringComparer.Ordinal)
            ? measures.TemperatureDifference(finding.Value.Typical)
            : Say("unit_" + finding.Scale.Quantity, Figures.Range(finding.Value, measures.Culture));

    /// <summary>A use.</summary>
    public string Use(CompostUse use) => Say("use_" + FinishTableReader.Word(use));

    /// <summary>A stage.</summary>
    public string Stage(CompostStage stage) => Say("stage_" + Code(stage));

    /// <summary>What was found, and where.</summary>
    public string Clue(StageClue clue) => Say("clue", Found(clue), Stage(clue.Points));

    /// <summary>Two clues that speak against each other.</summary>
    public string Against(StageClue earlier, StageClue later) =>
        Say("against", Found(earlier), Stage(earlier.Points), Found(later), Stage(later.Points));

    /// <summary>The sentence for a reason of this stage of the chain.</summary>
    public string Because(Reason reason) =>
        reason.Code switch
        {
            "finish.use_barred" or "finish.use_care" => Words.Of(
                reason.Code,
                measures.Culture,
                Scale((string)reason.Values[0]),
                Class((string)reason.Values[0], (string)reason.Values[1])
            ),
            "finish.use_sign" or "finish.use_sign_care" => Words.Of(
                reason.Code,
                measures.Culture,
                Sign((string)reason.Values[0], (string)reason.Values[1])
            ),
            "finish.use_ripe" or "finish.use_unripe" or "finish.use_unsure" => Words.Of(
                reason.Code,
                measures.Culture,
                Stage((CompostStage)reason.Values[0]),
                reason.Values[1]
            ),
            _ => measures.Say(reason),
        };

    /// <summary>The code of a stage.</summary>
    public static string Code(CompostStage stage) => stage.ToString().ToLowerInvariant();

    /// <summary>The code of a verdict on a use.</summary>
    public static string Code(UseVerdict verdict) =>
        verdict switch
        {
            UseVerdict.Yes => "yes",
            UseVerdict.WithCare => "with_care",
            UseVerdict.NotYet => "not_yet",
            UseVerdict.No => "no",
            _ => "cannot_tell",
        };

    /// <summary>The code of a verdict on a test in pots.</summary>
    public static string Code(PotTestVerdict verdict) =>
        verdict switch
        {
            PotTestVerdict.Harmed => "harmed",
            PotTestVerdict.Clean => "clean",
            PotTestVerdict.TooEarly => "too_early",
            PotTestVerdict.TooFewPots => "too_few_pots",
            PotTestVerdict.ControlHarmed => "control_harmed",
            _ => "no_control",
        };

    /// <summary>The code of an origin.</summary>
    public static string Code(Origin origin) => origin.ToString().ToLowerInvariant();

    private string Found(StageClue clue) =>
        Words.TryOf("finish.scale_" + clue.Sign, measures.Culture) is { } scale
            ? Say("clue_scale", scale, Class(clue.Sign, clue.Found))
            : Sign(clue.Sign, clue.Found);

    private string Sign(string sign, string found) => Say($"sign_{sign}_{found}");
}

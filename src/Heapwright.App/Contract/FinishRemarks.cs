using Heapwright.Core.FinishedCompost;

namespace Heapwright.App.Contract;

/// <summary>What <c>finish</c> says beside its answer: how it was found, what is missing, what to mind.</summary>
internal static class FinishRemarks
{
    private const double ShortTestDays = 5; // a flask is read for 5 to 10 days

    /// <summary>Says how the answer was found.</summary>
    public static void SayHow(FinishQuestion question, FinishAnswer answer, Assumptions assumptions)
    {
        if (!answer.Stage.Clues.IsEmpty)
        {
            assumptions.Say("finish.stage_how");
        }

        if (answer.Classes.Any(c => !c.Scale.EqualityIsPrinted))
        {
            assumptions.Say("finish.boundaries");
        }

        var yield = answer.Yield;
        if (yield.WetMass is { } mass)
        {
            assumptions.Say("finish.mass_from_" + FinishWords.Code(mass.From));
        }

        if (yield.Moisture.From == Origin.Usual && yield.WetMass is not null)
        {
            assumptions.Say("finish.moisture_usual");
        }

        if (
            yield.BulkDensity.From == Origin.Usual
            && (yield.Volume is not null || !answer.Beds.IsEmpty)
        )
        {
            assumptions.Say(yield.IsMassJoined ? "finish.density_joined" : "finish.density_usual");
        }

        if (yield.DryLossPercent is { From: Origin.Ash })
        {
            assumptions.Say("finish.ash_how");
        }

        if (answer.Nutrients.Nitrogen.From == Origin.Usual)
        {
            assumptions.Say("finish.nutrients_usual");
        }
        else if (answer.Nutrients.Nitrogen.From == Origin.Recipe)
        {
            assumptions.Say("finish.nutrients_recipe");
        }

        if (answer.Nutrients.FirstYearNitrogenPercent.From == Origin.Usual)
        {
            assumptions.Say("finish.first_year");
        }

        foreach (var plan in answer.Beds.Where(b => b.Centimetres.From != Origin.Measured))
        {
            assumptions.Say(
                plan.Centimetres.From == Origin.Volume ? "finish.depth_batch" : "finish.depth_usual"
            );
        }

        if (answer.Beds.Any(b => b.Bed.NitrogenNeed is not null && b.Bed.Crop is not null))
        {
            assumptions.Say("finish.needs_from_memory");
        }
    }

    /// <summary>What is missing, and what it would tell.</summary>
    public static IReadOnlyList<(string Field, string Text)> Missing(
        FinishQuestion question,
        FinishAnswer answer,
        FinishReader reader,
        FinishWords words
    )
    {
        var missing = new List<(string, string)>();
        void Add(bool isMissing, string field, string code)
        {
            if (isMissing)
            {
                missing.Add((field, words.Say("missing_" + code)));
            }
        }

        var noRise = question.SelfHeating is { Rise: null };
        Add(noRise, "self_heating.ambient_c", "room");
        Add(question.SelfHeating is null, "self_heating", "self_heating");
        var control = question.Seeds is { Control: null };
        Add(control, "seed_test.control", "control");
        Add(
            question.Seeds is { GerminationPercent: null, Control: not null },
            "seed_test.control",
            "control_dead"
        );
        Add(
            question.Seeds is { GerminationPercent: not null, GerminationIndex: null },
            "seed_test.root_mm",
            "roots"
        );
        Add(
            question.Seeds is null
                && !answer.Classes.Any(c =>
                    c.Scale.Quantity is "germination_pct_of_control" or "germination_index"
                ),
            "seed_test",
            "seeds"
        );
        Add(question.Signs.IsEmpty, "smell", "smell");
        Add(question.AgeDays is null, "age_days", "age");
        Add(!reader.Ash.Before && reader.Ash.After, "ash.before_pct_db", "ash_before");
        Add(reader.Ash.Before && !reader.Ash.After, "ash.after_pct_db", "ash_after");
        Add(!reader.Ash.Before && !reader.Ash.After, "ash", "ash");
        Add(answer.Yield.WetMass is null, "end.volume_m3", "amount");
        Add(
            answer.Yield.WetMass is not null
                && answer.Yield.MassPercent is null
                && answer.Yield.VolumePercent is null,
            "start",
            "start"
        );
        Add(answer.Nutrients.Nitrogen.From == Origin.Usual, "lab", "lab");
        Add(!question.Measured.ContainsKey("ec_ds_m"), "ec_ds_m", "salt");
        Add(question.Manure is null, "manure", "manure");
        Add(question.HerbicideRisk is null && question.Pots is null, "bean_test", "beans");
        return missing;
    }

    /// <summary>What to mind about the tests, and what comes next.</summary>
    public static IReadOnlyList<string> Notes(
        FinishQuestion question,
        FinishAnswer answer,
        FinishWords words
    )
    {
        var notes = new List<string>();
        if (question.SelfHeating is { Rise: not null } flask)
        {
            if (flask.StillRising)
            {
                notes.Add(words.Say("note_still_rising"));
            }
            else if (flask.OnlyFell)
            {
                notes.Add(words.Say("note_only_fell"));
            }
            else if (flask.Readings.Length > 1 && flask.Days < ShortTestDays)
            {
                notes.Add(words.Say("note_short_test", flask.Days));
            }
        }

        if (question.Seeds is { Control: { Percent: < 80 } control })
        {
            notes.Add(words.Say("note_poor_seed", control.Percent));
        }

        foreach (var (sign, word) in answer.SilentSigns)
        {
            notes.Add(words.Say("note_silent_sign", word.Replace('_', ' ')));
        }

        if (answer.Stage.Stage is CompostStage.Active or CompostStage.Cooling)
        {
            notes.Add(words.Say("note_first_turn"));
        }

        if (answer.Stage.Stage is CompostStage.Curing or CompostStage.Mature)
        {
            notes.Add(words.Say("note_cover"));
        }

        if (answer.Yield.Oversize is not null)
        {
            notes.Add(words.Say("note_oversize"));
        }

        if (answer.Beds.Any(b => b.Bed.Use == CompostUse.Beds))
        {
            notes.Add(words.Say("note_season"));
        }

        if (question.AboveAir is { Typical: < 10 })
        {
            notes.Add(words.Say("note_cold_is_no_proof"));
        }

        return notes;
    }
}

using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>The tests of a diary: their fields are those of <c>finish</c>, which judges them.</summary>
public static class HomeTests
{
    private const int LongestField = 60;
    private const double Largest = 1e9;

    // A flag in finish; in the diary a figure as all others, 1 for yes.
    private const string Swells = "swells";

    /// <summary>
    /// The days from the beginning of a test to its result, from first to last; null for what is measured at once.
    /// Source: the rows <c>…_days</c> of data/finish/finish-figures.csv.
    /// </summary>
    /// <param name="test">The test.</param>
    public static Spread? Days(HomeTest test)
    {
        var row = test switch
        {
            HomeTest.SelfHeating => "self_heating_days",
            HomeTest.Seeds => "seed_test_days",
            HomeTest.Beans => "bean_test_days",
            HomeTest.Bag => "bag_test_days",
            _ => null,
        };
        return row is null ? null : FinishTableReader.Tables[row];
    }

    /// <summary>The first and the last day on which a test that was begun is to be read; null for what is measured at once.</summary>
    /// <param name="begun">Its beginning.</param>
    /// <param name="zone">The zone of the heap.</param>
    public static (LocalDate First, LocalDate Last)? ToRead(EventEntry begun, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(begun);
        if (begun.Deed is not TestedDeed tested || Days(tested.Test) is not { } days)
        {
            return null;
        }

        var day = SiteDays.DayOf(Instant.FromDateTimeOffset(begun.At), zone);
        return (day.PlusDays((int)days.Low), day.PlusDays((int)days.High));
    }

    /// <summary>A figure of a test in words.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Text(TestValue value, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(measures);
        var name = Words.TryOf("diary.field_" + value.Field) ?? value.Field.Replace('_', ' ');
        return value.Field switch
        {
            Swells => Words.Of(value.Value > 0 ? "diary.test_swells" : "diary.test_keeps"),
            "ambient_c" or "highest_c" => $"{name} {measures.Celsius(value.Value)}",
            "volume_l" => $"{name} {measures.LitresAsGiven(value.Value)}",
            "mass_kg" => $"{name} {measures.KilogramsAsGiven(value.Value)}",
            _ => $"{name} {value.Value.ToString("0.###", measures.Culture)}",
        };
    }

    /// <summary>The results of a test as a part of the question of <c>finish</c>.</summary>
    /// <param name="tested">The result.</param>
    public static (string Field, JsonObject Part) Asked(TestedDeed tested)
    {
        ArgumentNullException.ThrowIfNull(tested);
        var part = new JsonObject();
        foreach (var (field, value) in tested.Values)
        {
            part[field] = field == Swells ? JsonValue.Create(value > 0) : JsonValue.Create(value);
        }

        return (tested.Test == HomeTest.Amount ? "end" : EntryWords.Of(tested.Test), part);
    }

    /// <summary>A test as it stands in an entry.</summary>
    /// <param name="fields">The fields of the entry.</param>
    /// <param name="kept">Whether it is read as it was kept.</param>
    /// <exception cref="InputProblem">Its figures are not those of such a test, or out of range.</exception>
    internal static TestedDeed Read(InputFields fields, bool kept)
    {
        var test = (HomeTest)
            EntryWords.Number(
                EntryWords.Tests,
                fields.Needed("test").Choice([.. EntryWords.Tests])
            );
        var deed = new TestedDeed
        {
            Test = test,
            Values = fields["values"] is { } values
                ? [.. values.Named(EntryLimits.MostWords).Select(v => Value(v.Name, v.Value))]
                : [],
        };
        return kept || Fault(deed) is not { } fault
            ? deed
            : throw (fields["values"] ?? fields.Owner).Problem(fault);
    }

    /// <summary>Whether figures can be those of such a test, as <c>finish</c> sees it.</summary>
    /// <param name="tested">The result.</param>
    /// <returns>What is wrong with it; null if nothing is.</returns>
    public static string? Fault(TestedDeed tested)
    {
        if (tested.IsBegun)
        {
            return Days(tested.Test) is null
                ? Words.Of("diary.test_needs", null, EntryWords.Of(tested.Test))
                : null;
        }

        var (field, part) = Asked(tested);
        try
        {
            FinishAnswers.Check(
                Input.Of(new JsonObject { [field] = part }, EntryWords.Of(tested.Test))
            );
            return null;
        }
        catch (InputProblem problem)
        {
            return problem.Message;
        }
    }

    private static TestValue Value(string name, Input value) =>
        name.Length is > 0 and <= LongestField
            ? new TestValue(name, value.Number(-Largest, Largest))
            : throw value.Problem(
                $"has a name of {name.Length} characters; at most {LongestField}"
            );
}

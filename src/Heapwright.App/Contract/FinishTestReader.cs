using System.Collections.Immutable;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;

namespace Heapwright.App.Contract;

/// <summary>Reads the tests that a person can do: flask, seeds, beans in pots, bag, heating again.</summary>
/// <param name="assumptions">Takes what was assumed.</param>
internal sealed class FinishTestReader(Assumptions assumptions)
{
    private const double Coldest = -40;
    private const double Hottest = 110;
    private const int MostReadings = 2000;
    private const double MostDays = 3660;
    private const double HeatsAgain = 20; // stands for "yes, it heats again", K

    /// <summary>The self-heating test.</summary>
    /// <param name="input">The field <c>self_heating</c>: an object, or its readings alone.</param>
    /// <param name="outside">The temperature of the room where the test itself does not say it; or null.</param>
    public SelfHeatingTest SelfHeating(Input input, Input? outside)
    {
        var around = outside?.Spread(Coldest, 60);
        if (input.IsArray)
        {
            return new SelfHeatingTest { RoomCelsius = around, Readings = Readings(input) };
        }

        var fields = input.Fields(
            "readings",
            "ambient_c",
            "room_c",
            "air_c",
            "rise_c",
            "highest_c",
            "peak_c",
            "max_c",
            "vessel"
        );
        fields["vessel"]?.Text(80);
        var room = Either(fields, "ambient_c", "room_c", "air_c")?.Spread(Coldest, 60);
        var highest = Either(fields, "highest_c", "peak_c", "max_c")?.Spread(Coldest, Hottest);
        var test = new SelfHeatingTest
        {
            RoomCelsius = room ?? around,
            HighestCelsius = highest,
            GivenRise = fields["rise_c"]?.Spread(-20, Hottest),
            Readings = fields["readings"] is { } list ? Readings(list) : [],
        };
        if (
            test is { GivenRise: { } given, Readings: [_, ..] }
            && test with { GivenRise = null } is { Rise: { } found }
            && Math.Abs(found.Typical - Math.Max(0, given.Typical)) > 1
        )
        {
            throw fields["rise_c"]!.Problem(
                FormattableString.Invariant(
                    $"{given.Typical} is not what the readings say, which is {found.Typical}; write one of the two"
                )
            );
        }

        return test;
    }

    /// <summary>Whether it heats again when turned and wetted, as a rise in K; null where it was not properly tried.</summary>
    /// <param name="input">The field <c>reheat</c>.</param>
    public Spread? Reheat(Input input)
    {
        if (!input.IsObject)
        {
            return Spread.Exact(input.YesNo() ? HeatsAgain : 0);
        }

        var fields = input.Fields("rise_c", "heats", "turned", "wetted", "days");
        var turned = fields["turned"]?.YesNo();
        var wetted = fields["wetted"]?.YesNo();
        fields["days"]?.Number(0, MostDays);
        var rise =
            fields["rise_c"]?.Spread(-20, Hottest)
            ?? (
                fields["heats"] is { } heats
                    ? Spread.Exact(heats.YesNo() ? HeatsAgain : 0)
                    : (Spread?)null
            );
        if (turned == false || wetted == false)
        {
            assumptions.Say("finish.reheat_not_tried");
            return null;
        }

        return rise is { } r
            ? Spread.Of(Math.Max(0, r.Low), Math.Max(0, r.Typical), Math.Max(0, r.High))
            : null;
    }

    /// <summary>1 where the bag swelled or smelt bad, 0 where it did not; null where nothing was said.</summary>
    /// <param name="input">The field <c>bag_test</c>.</param>
    public static Spread? Bag(Input input)
    {
        var fields = input.Fields("smell", "swells", "days");
        fields["days"]?.Number(0, MostDays);
        var swells =
            fields["swells"] is not { } word ? null
            : word.IsText ? word.Choice("none", "little", "much") != "none"
            : (bool?)word.YesNo();
        bool? smells = fields["smell"] is { } smell
            ? Words(smell, SignWords.Smell).Any(w => w is not ("none" or "earthy"))
            : null;
        return swells is null && smells is null
            ? null
            : Spread.Exact(swells == true || smells == true ? 1 : 0);
    }

    /// <summary>The seed test; null where it holds only shares, which go into <paramref name="measured"/>.</summary>
    /// <param name="input">The field <c>seed_test</c>.</param>
    /// <param name="measured">Takes shares of the control that were worked out already.</param>
    public SeedTest? Seeds(Input input, IDictionary<string, Spread> measured)
    {
        var fields = input.Fields([
            .. SeedFields,
            "control",
            .. ControlFields,
            "compost",
            "sample",
            "plant",
            "days",
            "germination_pct_of_control",
            "root_pct_of_control",
        ]);
        fields["plant"]?.Text(80);
        fields["days"]?.Number(0, MostDays);
        var germination = fields["germination_pct_of_control"]?.Spread(0, 500);
        var root = fields["root_pct_of_control"]?.Spread(0, 1000);
        MatterReader.One(fields, "compost", "sample");
        MatterReader.One(fields, "control", "control_sown");
        var compost = (fields["compost"] ?? fields["sample"])?.Fields(SeedFields) ?? fields;
        if (compost["sown"] is null && compost["germinated"] is null)
        {
            if (germination is { } g)
            {
                measured["germination_pct_of_control"] = g;
                if (root is { } r)
                {
                    measured["germination_index"] = Spread.Of(
                        g.Low * r.Low / 100,
                        g.Typical * r.Typical / 100,
                        g.High * r.High / 100
                    );
                }
            }

            return null;
        }

        if (germination is not null)
        {
            throw fields["germination_pct_of_control"]!.Problem(
                "was given with the seeds it follows from; write one of the two"
            );
        }

        return new SeedTest(
            Count(compost, SeedFields),
            fields["control"] is { } control ? Count(control.Fields(SeedFields), SeedFields)
                : ControlFields.Any(f => fields[f] is not null) ? Count(fields, ControlFields)
                : null
        );
    }

    /// <summary>The test with beans or peas in pots.</summary>
    /// <param name="input">The field <c>bean_test</c>.</param>
    public PotTest Pots(Input input)
    {
        var fields = input.Fields(
            "pots",
            "harmed",
            "control_pots",
            "control_harmed",
            "control",
            "days",
            "leaf_sets",
            "plant"
        );
        fields["plant"]?.Text(80);
        var control = fields["control"]?.Fields("pots", "harmed");
        var pots = fields["pots"]?.Whole(1, 1000);
        var controlPots = (fields["control_pots"] ?? control?["pots"])?.Whole(0, 1000);
        var controlHarmed = Harmed(
            fields["control_harmed"] ?? control?["harmed"],
            controlPots ?? pots ?? 1
        );
        if (pots is null)
        {
            assumptions.Say("finish.pots_assumed");
        }

        return new PotTest(
            pots ?? 1,
            Harmed(fields["harmed"], pots ?? 1),
            controlPots ?? (controlHarmed is null && control is null ? 0 : pots ?? 1),
            controlHarmed,
            fields["days"]?.Number(0, 365),
            fields["leaf_sets"]?.Number(0, 50)
        );
    }

    /// <summary>One word or a list of words, each once.</summary>
    /// <param name="input">The word or the list.</param>
    /// <param name="known">The words that are known.</param>
    public static ImmutableArray<string> Words(Input input, ImmutableArray<string> known) =>
        input.IsText
            ? [input.Choice([.. known])]
            :
            [
                .. input
                    .Items(0, 2 * known.Length)
                    .Select(i => i.Choice([.. known]))
                    .Distinct(StringComparer.Ordinal),
            ];

    private static string[] SeedFields { get; } = ["sown", "germinated", "root_mm"];

    private static string[] ControlFields { get; } =
    ["control_sown", "control_germinated", "control_root_mm"];

    private static Input? Either(InputFields fields, params ReadOnlySpan<string> names)
    {
        Input? found = null;
        foreach (var name in names)
        {
            if (fields[name] is not { } value)
            {
                continue;
            }

            found = found is null
                ? value
                : throw value.Problem(
                    $"\"{name}\" says again what another field says; {string.Join(", ", names.ToArray())} are one thing"
                );
        }

        return found;
    }

    private ImmutableArray<SelfHeatingReading> Readings(Input list)
    {
        var readings = new List<SelfHeatingReading>();
        DateTimeOffset? first = null;
        var items = list.Items(1, MostReadings);
        for (var i = 0; i < items.Count; i++)
        {
            if (!items[i].IsObject)
            {
                assumptions.Say("finish.readings_daily");
                readings.Add(new(i, items[i].Number(Coldest, Hottest), null));
                continue;
            }

            var fields = items[i]
                .Fields("day", "time", "hour", "temperature_c", "temperature_f", "ambient_c");
            double day = i;
            if (fields["day"] is { } given)
            {
                day = given.Number(0, MostDays);
            }
            else if (fields["hour"] is { } hour)
            {
                day = hour.Number(0, MostDays * 24) / 24;
            }
            else if (fields["time"] is { } time)
            {
                var (moment, _) = FinishDates.Read(time);
                first ??= moment;
                day = (moment - first.Value).TotalDays;
            }
            else
            {
                assumptions.Say("finish.readings_daily");
            }

            MatterReader.One(fields, "temperature_c", "temperature_f");
            MatterReader.One(fields, "day", "time");
            MatterReader.One(fields, "day", "hour");
            MatterReader.One(fields, "hour", "time");
            readings.Add(
                new(
                    day,
                    fields["temperature_f"] is { } fahrenheit
                        ? Degrees.Celsius(
                            fahrenheit.Number(
                                Degrees.Fahrenheit(Coldest),
                                Degrees.Fahrenheit(Hottest)
                            )
                        )
                        : fields.Needed("temperature_c").Number(Coldest, Hottest),
                    fields["ambient_c"]?.Number(Coldest, 60)
                )
            );
        }

        return [.. readings.OrderBy(r => r.Day)];
    }

    private static SeedCount Count(InputFields fields, string[] names)
    {
        var sown = fields.Needed(names[0]).Whole(1, 100_000);
        var germinated = fields.Needed(names[1]);
        var count = germinated.Whole(0, 100_000);
        if (count > sown)
        {
            throw germinated.Problem(
                FormattableString.Invariant(
                    $"{count} germinated of {sown} sown; at most {sown} is allowed"
                )
            );
        }

        var root = fields[names[2]] switch
        {
            null => (double?)null,
            { IsArray: true } list => list.Items(1, 10_000).Average(i => i.Number(0, 2000)),
            { } one => one.Number(0, 2000),
        };
        return new SeedCount(sown, count, root);
    }

    private static int? Harmed(Input? input, int pots)
    {
        if (input is null)
        {
            return null;
        }

        return input.Raw() switch
        {
            "true" => pots,
            "false" => 0,
            _ => input.Whole(0, pots),
        };
    }
}

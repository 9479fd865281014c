using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Tests.Diagnosis;

/// <summary>What an answer to signs makes of the stock.</summary>
public class StockAmountsTests
{
    private const string Wet =
        """{"heap":{"volume_m3":0.5,"container":"bay"},"signs":{"squeeze":{"core":"streams"},"smell":["rotten"]}}""";

    private const string Browns =
        """{"heap":{"volume_m3":0.5,"materials":[{"material":"leaves_mixed_dry","share":"only"}]},"signs":{"squeeze":{"core":"sponge"},"feel":{"core":"cold"}},"worry":["not_heating"]}""";

    private static readonly SiteContents Site = SiteContents.Of([]);

    [Fact]
    public void Without_stock_the_answer_has_no_word_of_it_and_offers_two_things_by_the_litre()
    {
        var cause = Cause(Ask(Wet, null), "too_wet");

        Assert.Null(cause["from_stock"]);
        Assert.NotNull(cause["amounts"]!["dry_leaves_l"]);
        Assert.NotNull(cause["amounts"]!["shredded_card_l"]);
        Assert.Matches(
            @"\(about [\d,]+–[\d,]+ L of dry leaves, or [\d,]+–[\d,]+ L of shredded card\)",
            Text(cause, "properly")
        );
    }

    [Fact]
    public void Card_by_the_litre_agrees_with_the_sum_by_hand()
    {
        // Half a cubic metre, 65 kg dry, from 74 to 62 % water: 65 * (74/26 - 62/38) = 78.95 kg of water over.
        // A litre of shredded card at its typical values: 0.075 kg, 8 % water: 0.069 kg dry and 0.006 kg of water;
        // it takes 0.069 * 62/38 - 0.006 = 0.1066 kg. 78.95 / 0.1066 = 741 litres. The median of the sample lies near.
        var typical = Cause(Ask(Wet, null), "too_wet")["amounts"]!["shredded_card_l"]!["typical"]!;

        Assert.InRange(typical.GetValue<double>(), 741 * 0.93, 741 * 1.07);
    }

    [Fact]
    public void Enough_of_two_things_is_told_as_alternatives_in_their_own_measures()
    {
        // 741 litres of card by the typical values above: ten sacks of 80 to 100 litres and more; 75 kg/m³ make it 56 kg.
        var lines = Lines(
            Ask(
                Wet,
                [
                    Have("cardboard_shredded", "card", 200, "kg"),
                    Have("wheat_straw", "straw", 5000, "l"),
                ]
            ),
            "too_wet"
        );

        Assert.StartsWith("From stock: about ", lines[0], StringComparison.Ordinal);
        Assert.Contains(" of card, or ", lines[0], StringComparison.Ordinal);
        Assert.Contains(" L (", lines[0], StringComparison.Ordinal);
        Assert.Contains(" of straw", lines[0], StringComparison.Ordinal);
        // What carries no weighty caution comes first, and straw comes with its own.
        Assert.Contains(
            lines,
            l =>
                l.StartsWith("Mind with straw: ", StringComparison.Ordinal)
                && l.Contains("weedkiller", StringComparison.Ordinal)
        );
        // In kg the density plays no part: 78.95 / (0.92 * 62/38 - 0.08) = 55.6 kg.
        var kilograms = double.Parse(
            lines[0].Split("about ")[1].Split(' ')[0],
            CultureInfo.InvariantCulture
        );
        Assert.InRange(kilograms, 54, 58);
    }

    [Fact]
    public void Empty_stock_says_so()
    {
        Assert.Equal(["Nothing in stock would do for this."], Lines(Ask(Wet, []), "too_wet"));
        // Greens do not dry a heap.
        Assert.Equal(
            ["Nothing in stock would do for this."],
            Lines(Ask(Wet, [Have("grass_clippings_fresh", "grass", 50, "l")]), "too_wet")
        );
    }

    [Fact]
    public void Too_little_says_how_much_is_there_and_how_much_is_wanting()
    {
        var lines = Lines(Ask(Wet, [Have("cardboard_shredded", "card", 20, "kg")]), "too_wet");

        // 55.6 kg by the sum above; 20 there, some 36 wanting.
        Assert.Matches(
            @"^It takes about 5[5-7] kg \(.*\) of card, more than is in stock\.$",
            lines[0]
        );
        Assert.Matches(@"^card: 20 kg in stock, and about 3[5-7] kg wanting\.$", lines[1]);
        Assert.DoesNotContain(lines, l => l.StartsWith("From stock", StringComparison.Ordinal));
    }

    [Fact]
    public void Things_that_are_too_little_by_themselves_are_added_up()
    {
        // 20 of 55.6 kg is 0.36 of it; twice that 0.72, three times 1.08.
        var two = Lines(
            Ask(
                Wet,
                [
                    Have("cardboard_shredded", "card", 20, "kg"),
                    Have("cardboard_shredded", "more card", 20, "kg"),
                ]
            ),
            "too_wet"
        );
        Assert.Matches("All of these together do about 7[0-3] % of it", two[3]);
        var three = Lines(
            Ask(
                Wet,
                [
                    Have("cardboard_shredded", "card", 20, "kg"),
                    Have("cardboard_shredded", "more card", 20, "kg"),
                    Have("cardboard_shredded", "still more card", 20, "kg"),
                ]
            ),
            "too_wet"
        );
        Assert.Equal("None of these is enough by itself; together they are.", three[4]);
    }

    [Fact]
    public void Amount_that_may_not_be_enough_is_never_told_above_what_is_there()
    {
        var lines = Lines(Ask(Wet, [Have("cardboard_shredded", "card", 60, "kg")]), "too_wet");

        Assert.Matches(@"^From stock: about 5[5-7] kg \(\d+ to 60\) of card\.", lines[0]);
        Assert.Matches(@"^card: at worst \d+ kg more than there is\.$", lines[1]);
    }

    [Fact]
    public void Browns_that_lay_in_store_are_proposed_only_if_they_are_dry()
    {
        var lines = Lines(
            Ask(Wet, [Have("leaves_mixed_dry", "leaves", 90, "wheelbarrow", days: 60)]),
            "too_wet"
        );

        Assert.StartsWith("From stock: about ", lines[0], StringComparison.Ordinal);
        Assert.Contains(" wheelbarrows (", lines[0], StringComparison.Ordinal);
        Assert.Contains(
            lines,
            l =>
                l.StartsWith(
                    "leaves: only if it is still dry after 60 days in store.",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void Browns_that_are_wet_are_held_back()
    {
        var lines = Lines(
            Ask(Wet, [Have("cardboard_wet", "wet card", 90, "wheelbarrow")]),
            "too_wet"
        );

        Assert.Equal("Nothing in stock would do for this.", lines[0]);
        Assert.StartsWith("wet card: not proposed", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Greens_that_are_spoiled_are_held_back_and_fresh_ones_proposed_with_their_caution()
    {
        var spoiled = Lines(
            Ask(Browns, [Have("grass_clippings_fresh", "old grass", 2000, "l", days: 9)]),
            "short_of_nitrogen"
        );
        Assert.Equal("Nothing in stock would do for this.", spoiled[0]);
        Assert.StartsWith("old grass: not proposed. ", spoiled[1], StringComparison.Ordinal);

        var fresh = Ask(Browns, [Have("grass_clippings_fresh", "grass", 20000, "l")]);
        var lines = Lines(fresh, "short_of_nitrogen");
        Assert.StartsWith("From stock: about ", lines[0], StringComparison.Ordinal);
        Assert.Contains(
            lines,
            l =>
                l.StartsWith("Mind with grass: ", StringComparison.Ordinal)
                && l.Contains("weedkiller", StringComparison.Ordinal)
        );
        Assert.Contains(
            fresh["cautions"]!.AsArray(),
            c => c!["id"]!.GetValue<string>() == "herbicide_residue"
        );
    }

    [Fact]
    public void Sick_plants_come_with_their_caution_and_what_may_never_go_in_is_not_proposed()
    {
        var lines = Lines(
            Ask(
                Browns,
                [
                    Have("brassica_leaves_fresh", "cabbage leaves", 20000, "l"),
                    Have("dog_waste", "dog", 20000, "l"),
                    Have("meat_fish_scraps", "fish", 20000, "l"),
                ]
            ),
            "short_of_nitrogen"
        );

        Assert.StartsWith("From stock: about ", lines[0], StringComparison.Ordinal);
        Assert.Contains("of cabbage leaves", lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain("of dog", lines[0], StringComparison.Ordinal);
        Assert.DoesNotContain("of fish", lines[0], StringComparison.Ordinal);
        Assert.Contains("Meat and fish scraps is better left out of a heap.", lines);
        Assert.Contains(
            lines,
            l => l.StartsWith("Mind with cabbage leaves: ", StringComparison.Ordinal)
        );
        Assert.Contains(
            lines,
            l => l.Contains("only where the heap gets hot", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Size_that_is_not_known_is_said_and_nothing_is_told_from_stock()
    {
        foreach (var heap in new[] { "{}", """{"size":"tractor_size"}""" })
        {
            var answer = Ask(
                Wet.Replace(
                    "{\"volume_m3\":0.5,\"container\":\"bay\"}",
                    heap,
                    StringComparison.Ordinal
                ),
                [Have("cardboard_shredded", "card", 200, "kg")]
            );
            var cause = Cause(answer, "too_wet");
            Assert.Null(cause["amounts"]);
            Assert.Null(cause["from_stock"]);
            Assert.Equal(
                "How much cannot be told: the size of the heap is not known.",
                Text(cause, "amounts_unknown")
            );
        }
    }

    [Fact]
    public void Word_for_a_size_gives_a_wide_range_and_says_so()
    {
        var answer = Ask(
            Wet.Replace("\"volume_m3\":0.5", "\"size\":\"medium\"", StringComparison.Ordinal),
            null
        );
        var card = Cause(answer, "too_wet")["amounts"]!["shredded_card_l"]!;

        Assert.True(card["high"]!.GetValue<double>() > 4 * card["low"]!.GetValue<double>());
        Assert.Contains(
            "Amounts: for a heap of 0.4 m³ to 1.5 m³",
            answer["assumptions"]!.ToJsonString().Replace("\\u00B3", "³", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Sentences_are_there_in_German()
    {
        using var german = Languages.Use("de");
        var lines = Lines(
            Ask(
                Wet,
                [
                    Have("cardboard_shredded", "Pappe", 20, "kg"),
                    Have("cardboard_wet", "nasse Pappe", 20, "kg"),
                ]
            ),
            "too_wet"
        );

        Assert.StartsWith("Es braucht etwa ", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("Pappe: 20 kg da, etwa ", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("nasse Pappe: nicht vorgeschlagen", lines[2], StringComparison.Ordinal);
    }

    private static StuffToAdd Have(
        string material,
        string name,
        double amount,
        string unit,
        int days = 0
    ) =>
        StuffToAdd.Of(
            Site,
            new StockEntry
            {
                Id = Guid.Empty,
                Material = material,
                Name = name,
                Amount = amount,
                Unit = unit,
                Since = new LocalDate(2026, 10, 1),
            },
            days
        )!;

    private static JsonObject Ask(string question, StuffToAdd[]? stock) =>
        DiagnoseAnswers
            .Answer(
                Input.Read(Encoding.UTF8.GetBytes(question), "the question"),
                Measures.Metric,
                stock
            )
            .Json;

    private static JsonObject Cause(JsonObject answer, string id) =>
        answer["causes"]!
            .AsArray()
            .Select(c => c!.AsObject())
            .Single(c => c["id"]!.GetValue<string>() == id);

    private static string Text(JsonObject json, string field) => json[field]!.GetValue<string>();

    private static string[] Lines(JsonObject answer, string cause) =>
        [.. Cause(answer, cause)["from_stock"]!.AsArray().Select(l => l!.GetValue<string>())];
}

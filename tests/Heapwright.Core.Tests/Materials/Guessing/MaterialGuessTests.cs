using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Guessing;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.Materials.Guessing;

public class MaterialGuessTests
{
    [Fact]
    public void Guess_OneMaterialKnown_IsThatAndATenthWider()
    {
        var library = new MaterialLibrary([Stuff.Of()]);
        var guess = MaterialGuess.Of(library, Seen()).Material.Properties;
        var nitrogen = guess[MaterialProperty.Nitrogen]!.Value;
        Assert.InRange(nitrogen.Typical, 0.89, 0.91);
        // 0.9 x (0.6/0.9)^1.1 and 0.9 x (1.4/0.9)^1.1
        Assert.InRange(nitrogen.Low, 0.570, 0.582);
        Assert.InRange(nitrogen.High, 1.455, 1.475);
    }

    [Fact]
    public void Guess_TwoUnlikeMaterials_SpansBoth()
    {
        var rich = Stuff.Of("rich", family: "other") with
        {
            Properties = Stuff.Usual.With(MaterialProperty.Nitrogen, Spread.Of(3, 4, 5)),
        };
        var library = new MaterialLibrary([Stuff.Of(), rich]);
        var nitrogen = MaterialGuess.Of(library, Seen()).Material.Properties[
            MaterialProperty.Nitrogen
        ]!.Value;
        Assert.InRange(nitrogen.Low, 0.5, 0.8);
        Assert.InRange(nitrogen.High, 4.2, 5.5);
    }

    [Fact]
    public void Guess_FamilyWithManyRows_CountsLikeAnyOther()
    {
        var rich = Stuff.Of("rich", family: "other") with
        {
            Properties = Stuff.Usual.With(MaterialProperty.Nitrogen, Spread.Of(3, 4, 5)),
        };
        var few = new MaterialLibrary([Stuff.Of(), rich]);
        var many = new MaterialLibrary([
            Stuff.Of(),
            rich,
            .. Enumerable
                .Range(0, 20)
                .Select(i => rich with { Id = FormattableString.Invariant($"rich_{i}") }),
        ]);
        Assert.Equal(
            MaterialGuess.Properties(few, Seen())[MaterialProperty.Nitrogen]!.Value.Typical,
            MaterialGuess.Properties(many, Seen())[MaterialProperty.Nitrogen]!.Value.Typical,
            1e-6
        );
    }

    [Fact]
    public void Guess_NothingAlike_StillAnswersAndSaysSo()
    {
        var library = new MaterialLibrary([Stuff.Of(kind: "manure", freshness: "fresh")]);
        var guess = MaterialGuess.Of(library, Seen());
        Assert.Equal(0, guess.Pooled);
        Assert.Equal("materials.guess_from_kindred", guess.Assumptions[0].Code);
        Assert.NotNull(guess.Material.Properties[MaterialProperty.Nitrogen]);
    }

    [Fact]
    public void Guess_EmptyLibrary_IsRefused() =>
        Assert.Throws<ArgumentException>(() => MaterialGuess.Of(new MaterialLibrary([]), Seen()));

    [Fact]
    public void Guess_UnknownPlant_WarnsOfPoison() =>
        Assert.Contains(
            "toxic_plant",
            MaterialGuess.Of(new MaterialLibrary([Stuff.Of()]), Seen()).Material.Cautions
        );

    [Fact]
    public void Description_UnknownWord_IsRefused() =>
        Assert.Throws<ArgumentException>(() => LookAndFeel.Of("dry", "leafy", ["plaid"], []));

    private static LookAndFeel Seen() => LookAndFeel.Of("dry", "leafy", [], []);
}

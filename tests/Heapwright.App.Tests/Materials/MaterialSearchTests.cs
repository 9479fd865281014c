using CsCheck;
using Heapwright.App.Library;
using Heapwright.Core.Materials;

namespace Heapwright.App.Tests.Materials;

/// <summary>Words people use (common usage, no source), asked of the library that ships.</summary>
public class MaterialSearchTests
{
    private static readonly MaterialLibrary Library = LibraryReader.Library;

    /// <summary>The short way to an exact name and the long way through the index must agree.</summary>
    [Fact]
    public void CloseMatch_EveryNameOfTheLibrary_IsTheFirstFindOrNone()
    {
        var found = 0;
        foreach (var name in Library.All.SelectMany(m => m.AlsoCalled.Append(m.Name).Append(m.Id)))
        {
            if (MaterialSearch.CloseMatch(Library, name) is { } match)
            {
                Assert.Equal(MaterialSearch.Search(Library, name, 1)[0].Id, match.Id);
                found++;
            }
        }

        Assert.True(found > 1500, $"{found}");
    }

    [Theory]
    [InlineData("lawn mowings", "grass_clippings_fresh")]
    [InlineData("toms", "tomato_plants_fresh")]
    [InlineData("spent coffee", "coffee_grounds")]
    [InlineData("chook poo", "hen_manure_fresh")]
    [InlineData("cardboard boxes", "cardboard_corrugated")]
    [InlineData("stable muck", "horse_manure_straw")]
    [InlineData("wheat straw", "wheat_straw")]
    [InlineData("leafs", "leaves_mixed_dry")]
    [InlineData("leaves", "leaves_mixed_dry")]
    [InlineData("grass", "grass_clippings_fresh")]
    [InlineData("GRASS  Clippings!", "grass_clippings_fresh")]
    [InlineData("clippings of grass", "grass_clippings_fresh")]
    [InlineData("grass cliping", "grass_clippings_fresh")]
    [InlineData("cofee gronds", "coffee_grounds")]
    [InlineData("coffee-grounds", "coffee_grounds")]
    [InlineData("cöffée grounds", "coffee_grounds")]
    [InlineData("leafmould", "leaf_mould")]
    [InlineData("leaf mould", "leaf_mould")]
    [InlineData("leaf mold", "leaf_mould")]
    [InlineData("saw dust", "sawdust_softwood")]
    [InlineData("sawdust", "sawdust_softwood")]
    [InlineData("news paper", "newspaper")]
    [InlineData("chiken poo", "hen_manure_fresh")]
    [InlineData("bunny dung", "rabbit_manure_bedding")]
    [InlineData("straw wheat", "wheat_straw")]
    [InlineData("egg shells", "eggshells")]
    [InlineData("wheat_straw", "wheat_straw")]
    [InlineData("tomato vine", "tomato_plants_fresh")]
    [InlineData("kitchen scraps", "kitchen_scraps")]
    [InlineData("food waste", "kitchen_scraps")]
    [InlineData("a bucket of coffee grounds", "coffee_grounds")]
    public void Search_PeoplesWords_FindsTheMaterialFirst(string words, string id) =>
        Assert.Equal(id, MaterialSearch.Search(Library, words)[0].Id);

    [Theory]
    [InlineData("qwxyz")]
    [InlineData("zzzzzz")]
    [InlineData("xyzzy plugh")]
    [InlineData("")]
    [InlineData("  ,.;-- ")]
    [InlineData("the of and")]
    [InlineData("\ud800")]
    public void Search_Nonsense_FindsNothing(string words) =>
        Assert.Empty(MaterialSearch.Search(Library, words));

    [Fact]
    public void Search_BeginningOfAWord_FindsAllThatStartSo()
    {
        var found = MaterialSearch.Search(Library, "toma").Select(m => m.Id);
        Assert.Contains("tomato_plants_fresh", found);
    }

    [Fact]
    public void Search_EveryNameOfEveryMaterial_FindsItAmongTheFirst()
    {
        foreach (var material in Library.All)
        {
            foreach (var name in material.AlsoCalled.Add(material.Name).Add(material.Id))
            {
                var found = MaterialSearch.Search(Library, name, 3).Select(m => m.Id);
                Assert.True(
                    found.Contains(material.Id, StringComparer.Ordinal),
                    $"{name} does not find {material.Id}, but {string.Join(", ", found)}"
                );
            }
        }
    }

    /// <summary>Clover is called green manure and pine needles pine straw, but nobody who asks for either means them first.</summary>
    [Fact]
    public void Search_AWordOfMany_PutsWhatIsCalledSoThroughoutFirst()
    {
        var manures = MaterialSearch.Search(Library, "manure", 5).Select(m => m.Id);
        var straws = MaterialSearch.Search(Library, "straw", 5).Select(m => m.Id);

        Assert.All(manures, id => Assert.Contains("manure", id, StringComparison.Ordinal));
        Assert.All(straws, id => Assert.Contains("straw", id, StringComparison.Ordinal));
    }

    [Fact]
    public void Search_MostGiven_ReturnsNoMore()
    {
        Assert.Equal(2, MaterialSearch.Search(Library, "leaves", 2).Count);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            MaterialSearch.Search(Library, "leaves", 0)
        );
    }

    [Fact]
    public void Search_AnyText_NeverFailsAndRepeatsItself() =>
        Gen.String.Sample(
            text =>
            {
                var once = MaterialSearch.Search(Library, text).Select(m => m.Id);
                var again = MaterialSearch.Search(Library, text).Select(m => m.Id);
                Assert.Equal(once, again);
            },
            iter: 200
        );

    [Theory]
    [InlineData("grass clippings", "grass_clippings_fresh")]
    [InlineData("dry leaves", "leaves_mixed_dry")]
    [InlineData("coffee grounds", "coffee_grounds")]
    [InlineData("straw", "wheat_straw")]
    [InlineData("wood chips", "wood_chips_coarse")]
    [InlineData("shredded paper", "office_paper_shredded")]
    [InlineData("chicken manure", "hen_manure_fresh")]
    [InlineData("chicken dung", "hen_manure_fresh")]
    [InlineData("cofee grounds", "coffee_grounds")]
    [InlineData("cardboard", "cardboard_corrugated")]
    public void CloseMatch_PlainName_IsTheMaterial(string words, string id) =>
        Assert.Equal(id, MaterialSearch.CloseMatch(Library, words)?.Id);

    [Theory]
    [InlineData("qwxyz")]
    [InlineData("unicorn manure")]
    [InlineData("moon rock")]
    [InlineData("stuff")]
    [InlineData("dry")]
    [InlineData("brown")]
    [InlineData("material A")]
    [InlineData("first ingredient")]
    [InlineData("")]
    public void CloseMatch_NotClear_IsNull(string words) =>
        Assert.Null(MaterialSearch.CloseMatch(Library, words));
}

using Heapwright.Core.Materials;

namespace Heapwright.Core.Tests.Materials;

public class MaterialSearchRuleTests
{
    [Fact]
    public void Search_ExactOtherName_BeatsEverything()
    {
        // "rotted muck" is a name of the second, and much like the name of the first.
        var library = new MaterialLibrary([
            Stuff.Of("rotted_mucks"),
            Stuff.Of("old_stuff", alsoCalled: ["rotted muck"]),
        ]);
        Assert.Equal("old_stuff", MaterialSearch.Search(library, "Rotted Muck")[0].Id);
    }

    [Fact]
    public void Search_EqualFit_KeepsTheOrderOfTheLibrary()
    {
        var library = new MaterialLibrary([
            Stuff.Of("b_hay", alsoCalled: ["field hay"]),
            Stuff.Of("a_hay", alsoCalled: ["field hay"]),
        ]);
        Assert.Equal(
            ["b_hay", "a_hay"],
            MaterialSearch.Search(library, "field hay").Select(m => m.Id)
        );
    }

    [Fact]
    public void CloseMatch_TwoFamiliesFitAlike_IsNull()
    {
        var library = new MaterialLibrary([
            Stuff.Of("cow_manure", family: "ruminant"),
            Stuff.Of("hen_manure", family: "poultry"),
        ]);
        Assert.Null(MaterialSearch.CloseMatch(library, "manure"));
    }

    [Fact]
    public void CloseMatch_OneFamilyFitsTwice_IsTheBetter()
    {
        var library = new MaterialLibrary([
            Stuff.Of("hen_manure", family: "poultry"),
            Stuff.Of("hen_manure_dry", family: "poultry"),
        ]);
        Assert.Equal("hen_manure", MaterialSearch.CloseMatch(library, "hen manures")?.Id);
    }

    [Fact]
    public void Search_EmptyLibrary_FindsNothing()
    {
        var library = new MaterialLibrary([]);
        Assert.Empty(MaterialSearch.Search(library, "hay"));
        Assert.Null(MaterialSearch.CloseMatch(library, "hay"));
    }
}

using System.Globalization;
using Heapwright.App.Library;
using Heapwright.Core.Materials;

namespace Heapwright.App.Tests.Library;

/// <summary>German names of the library (common usage, no source): all there, each its own, found in any language.</summary>
public class GermanNamesTests
{
    private static readonly MaterialLibrary English = In("en");
    private static readonly MaterialLibrary German = In("de");

    [Fact]
    public void GermanNames_EveryMaterial_HasOneAndNoOtherHas()
    {
        Assert.Equal(
            English.All.Select(m => m.Id).Order(StringComparer.Ordinal),
            GermanNames.Ids.Order(StringComparer.Ordinal)
        );
        Assert.All(German.All, m => Assert.NotEqual("", m.Name));
        var twice = German
            .All.GroupBy(m => m.Name, StringComparer.OrdinalIgnoreCase)
            .Where(g => g.Count() > 1)
            .Select(g => g.Key);
        Assert.Empty(twice);
    }

    [Fact]
    public void GermanNames_NoWord_NamesTwoMaterials()
    {
        var twice = English
            .All.SelectMany(m => GermanNames.Of(m.Id)!.All.Select(w => (Word: w, m.Id)))
            .GroupBy(w => w.Word, StringComparer.OrdinalIgnoreCase)
            .Where(g => g.Select(w => w.Id).Distinct(StringComparer.Ordinal).Count() > 1)
            .Select(g => $"{g.Key}: {string.Join(", ", g.Select(w => w.Id))}");
        Assert.Empty(twice);
    }

    [Fact]
    public void GermanNames_EveryNote_IsSaidInGermanToo() =>
        Assert.All(
            English.All,
            m => Assert.Equal(m.Note.Length > 0, GermanNames.Of(m.Id)!.Note.Length > 0)
        );

    [Fact]
    public void GermanNames_EveryRow_HasSourceAndKind() =>
        Assert.All(
            DataFiles.Csv("materials-de.csv"),
            row =>
            {
                Assert.Equal("from_memory", row["kind"]);
                Assert.Contains(
                    "{" + row["source"],
                    DataFiles.Text("references.bib"),
                    StringComparison.Ordinal
                );
            }
        );

    [Fact]
    public void Library_InGerman_DiffersInNothingButWords()
    {
        Assert.Equal(English.All.Length, German.All.Length);
        for (var i = 0; i < English.All.Length; i++)
        {
            var (one, other) = (English.All[i], German.All[i]);
            Assert.Equal(
                one,
                other with
                {
                    Name = one.Name,
                    AlsoCalled = one.AlsoCalled,
                    Note = one.Note,
                }
            );
            // Guano is called so in both.
            Assert.True(one.Name != other.Name || one.Id == "bat_seabird_guano", one.Name);
        }
    }

    [Theory]
    [InlineData("Rasenschnitt", "grass_clippings_fresh")]
    [InlineData("Grasschnitt", "grass_clippings_fresh")]
    [InlineData("Laub", "leaves_mixed_dry")]
    [InlineData("Blätter", "leaves_mixed_dry")]
    [InlineData("Blaetter", "leaves_mixed_dry")]
    [InlineData("Kuechenabfaelle", "kitchen_scraps")]
    [InlineData("küchenabfälle", "kitchen_scraps")]
    [InlineData("Kaffeesatz", "coffee_grounds")]
    [InlineData("Stroh", "wheat_straw")]
    [InlineData("Heu", "grass_hay")]
    [InlineData("Pferdemist", "horse_manure_straw")]
    [InlineData("Pferdemist mit Stroh", "horse_manure_straw")]
    [InlineData("Hühnermist", "hen_manure_fresh")]
    [InlineData("Kuhmist", "cow_manure_fresh")]
    [InlineData("Häcksel", "wood_chips_coarse")]
    [InlineData("Hackschnitzel", "wood_chips_coarse")]
    [InlineData("Pappe", "cardboard_corrugated")]
    [InlineData("Karton", "cardboard_corrugated")]
    [InlineData("Sägemehl", "sawdust_softwood")]
    [InlineData("Eierschale", "eggshells")]
    [InlineData("Brennnesseln", "nettles_fresh")]
    [InlineData("Unkraut", "weeds_annual_fresh")]
    [InlineData("Gartenerde", "garden_soil")]
    [InlineData("Holzasche", "wood_ash")]
    public void Search_GermanWords_FindTheMaterialInEveryLanguage(string words, string id)
    {
        Assert.Equal(id, MaterialSearch.Search(English, words)[0].Id);
        Assert.Equal(id, MaterialSearch.CloseMatch(English, words)?.Id);
        Assert.Equal(id, MaterialSearch.Search(German, words)[0].Id);
        Assert.Equal(id, MaterialSearch.CloseMatch(German, words)?.Id);
    }

    [Theory]
    [InlineData("Kafeesatz", "coffee_grounds")]
    [InlineData("Pferdemisst", "horse_manure_straw")]
    [InlineData("Küchenabfäle", "kitchen_scraps")]
    public void Search_GermanWordsWithASlip_FindTheMaterial(string words, string id)
    {
        Assert.Equal(id, MaterialSearch.Search(English, words)[0].Id);
        Assert.Equal(id, MaterialSearch.Search(German, words)[0].Id);
    }

    [Theory]
    [InlineData("grass clippings", "grass_clippings_fresh")]
    [InlineData("coffee grounds", "coffee_grounds")]
    [InlineData("wheat_straw", "wheat_straw")]
    [InlineData("dry leaves", "leaves_mixed_dry")]
    public void Search_EnglishWords_FindTheMaterialInGermanToo(string words, string id) =>
        Assert.Equal(id, MaterialSearch.Search(German, words)[0].Id);

    [Fact]
    public void Search_EveryGermanWord_FindsItsMaterialAmongTheFirst()
    {
        foreach (var material in English.All)
        {
            foreach (var word in GermanNames.Of(material.Id)!.All)
            {
                foreach (var library in (MaterialLibrary[])[English, German])
                {
                    var found = MaterialSearch.Search(library, word, 3).Select(m => m.Id);
                    Assert.True(
                        found.Contains(material.Id, StringComparer.Ordinal),
                        $"{word} does not find {material.Id}, but {string.Join(", ", found)}"
                    );
                }
            }
        }
    }

    /// <summary>German words beside the English ones change nothing for who asks in English.</summary>
    [Fact]
    public void Search_EveryEnglishWord_FindsTheSameAsWithoutGerman()
    {
        var alone = new MaterialLibrary(English.All);
        foreach (var name in English.All.SelectMany(m => m.AlsoCalled.Append(m.Name).Append(m.Id)))
        {
            Assert.Equal(
                MaterialSearch.Search(alone, name).Select(m => m.Id),
                MaterialSearch.Search(English, name).Select(m => m.Id)
            );
            Assert.Equal(
                MaterialSearch.CloseMatch(alone, name)?.Id,
                MaterialSearch.CloseMatch(English, name)?.Id
            );
        }
    }

    private static MaterialLibrary In(string language)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
        try
        {
            return LibraryReader.Library;
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }
}

using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Materials.Stock;

namespace Heapwright.App.Tests.Texts;

/// <summary>Every reason that can come out of Core has its sentence, with a place for each of its values.</summary>
public class MaterialTextsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(3)]
    [InlineData(4000.0 / 2)]
    public void StockAge_EveryMaterial_HasWords(double days)
    {
        foreach (var material in LibraryReader.Library.All)
        {
            foreach (var keeping in Enum.GetValues<Keeping>())
            {
                foreach (var reason in StockAge.After(material, days, keeping).Reasons)
                {
                    Assert.False(string.IsNullOrWhiteSpace(Words.Of(reason)));
                }
            }
        }
    }

    [Fact]
    public void MayItGoIn_EveryMaterial_HasWords()
    {
        foreach (var material in LibraryReader.Library.All)
        {
            foreach (var hot in (bool[])[true, false])
            {
                foreach (var reason in MayItGoIn.Judge(material, hot).Reasons)
                {
                    Assert.False(string.IsNullOrWhiteSpace(Words.Of(reason)));
                }
            }
        }
    }

    [Fact]
    public void Sharpening_Remarks_HaveWords()
    {
        var grass = LibraryReader.Library.Find("grass_clippings_fresh")!;
        var sharpened = Sharpening.Of(
            grass,
            [SqueezeTest.Of(SqueezeWord.Dust), LabReport.Of(MaterialProperty.Nitrogen, 15, 0.1)]
        );
        Assert.Equal(
            [
                "materials.squeeze_living",
                "materials.surprising_measurement",
                "materials.density_follows_water",
            ],
            sharpened.Remarks.Select(r => r.Code)
        );
        Assert.All(sharpened.Remarks, r => Assert.NotEmpty(Words.Of(r)));
    }
}

using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Materials;

namespace Heapwright.App.Tests.Library;

/// <summary>What must hold of the data files as a whole.</summary>
public class LibraryDataTests
{
    private static readonly MaterialLibrary Library = LibraryReader.Library;

    [Fact]
    public void Library_Size_IsAtLeast150() =>
        Assert.True(Library.All.Length >= 150, $"{Library.All.Length} materials");

    [Fact]
    public void EveryMaterial_EveryProperty_IsThereWithItsSource()
    {
        foreach (var material in Library.All)
        {
            var sourced = material.Sources.Select(s => s.Field).ToList();
            foreach (var property in PropertyFacts.All)
            {
                var field = PropertyFacts.FieldName(property);
                Assert.True(
                    material.Properties[property] is not null,
                    $"{material.Id} has no {field}"
                );
                Assert.Single(sourced, f => string.Equals(f, field, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void EverySource_InTheReferences()
    {
        var keys = DataFiles
            .Text("references.bib")
            .Split('\n')
            .Where(line => line.StartsWith('@'))
            .Select(line =>
                line[(line.IndexOf('{', StringComparison.Ordinal) + 1)..].TrimEnd(',', '\r', ' ')
            )
            .ToHashSet(StringComparer.Ordinal);
        Assert.NotEmpty(keys);
        foreach (var material in Library.All)
        {
            foreach (var source in material.Sources)
            {
                Assert.True(
                    keys.Contains(source.Source),
                    $"{material.Id} {source.Field}: {source.Source} is not in references.bib"
                );
            }
        }
    }

    [Fact]
    public void EveryCode_HasItsSentence()
    {
        foreach (var material in Library.All)
        {
            foreach (
                var code in material
                    .Prepare.Select(c => "prepare." + c)
                    .Concat(material.AskGiver.Select(c => "askGiver." + c))
                    .Concat(material.Cautions.Select(c => $"cautions.{c}.text"))
                    .Concat(material.Cautions.Select(c => $"cautions.{c}.why"))
            )
            {
                Assert.False(
                    string.IsNullOrWhiteSpace(Words.TryOf(code)),
                    $"{material.Id}: {code} has no sentence"
                );
            }
        }
    }

    // Source: pure volatile solids hold 45 to 60 % carbon (Richard, Cornell, printed), so carbon cannot exceed 60 % of
    // what is not ash. Charcoal is nearly pure carbon, and what little is left in ashes is charcoal.
    [Fact]
    public void EveryMaterial_Carbon_FitsTheOrganicMatter()
    {
        string[] charred = ["wood_ash", "coal_ash", "biochar", "soot_charred_wood"];
        foreach (var material in Library.All)
        {
            var share = charred.Contains(material.Id, StringComparer.Ordinal) ? 1.0 : 0.60;
            var carbon = material.Properties[MaterialProperty.Carbon]!.Value;
            var ash = material.Properties[MaterialProperty.Ash]!.Value;
            Assert.True(carbon.High <= 100 * share, $"{material.Id}: {carbon.High} % carbon");
            Assert.True(
                carbon.Typical <= (share * (100 - ash.Typical)) + 0.01,
                $"{material.Id}: {carbon.Typical} % carbon with {ash.Typical} % ash"
            );
        }
    }

    [Fact]
    public void EveryMaterial_Shares_FitIntoTheDryMatter()
    {
        foreach (var material in Library.All)
        {
            double Typical(MaterialProperty p) => material.Properties[p]!.Value.Typical;
            Assert.True(
                Typical(MaterialProperty.Ash)
                    + Typical(MaterialProperty.Fast)
                    + Typical(MaterialProperty.Lignin)
                    <= 100.01,
                material.Id
            );
        }
    }

    [Fact]
    public void EveryMaterial_Words_AreKnown()
    {
        foreach (var material in Library.All)
        {
            Assert.Contains(
                material.Kind,
                (string[])
                    [
                        "leafy",
                        "stemmy",
                        "woody",
                        "fruity",
                        "seedy",
                        "papery",
                        "manure",
                        "meal",
                        "soily",
                    ]
            );
            Assert.Contains(material.Freshness, (string[])["fresh", "wilted", "dry", "aged"]);
            Assert.Contains(
                material.CountsAs,
                (string[])["green", "brown", "structure", "soil", "other"]
            );
            Assert.Contains(material.Particle, (string[])["coarse", "medium", "fine"]);
            Assert.Contains(
                material.Advice,
                (string[])["may", "with_care", "not_advised", "never"]
            );
            Assert.Contains(
                material.SpoilsHow,
                (string[])["", "ferments", "loses_nitrogen", "gets_wet", "moulds", "dries_out"]
            );
            Assert.Matches("^[a-z][a-z0-9_]*$", material.Id);
        }
    }

    [Fact]
    public void EveryName_BelongsToOneFamily()
    {
        var twice = Library
            .All.SelectMany(m =>
                m.AlsoCalled.Add(m.Name)
                    .Distinct(StringComparer.OrdinalIgnoreCase)
                    .Select(n => (Name: n, m.Id, m.Family))
            )
            .GroupBy(n => n.Name, StringComparer.OrdinalIgnoreCase)
            .Where(g => g.Select(n => n.Family).Distinct(StringComparer.Ordinal).Skip(1).Any())
            .Select(g => $"{g.Key}: {string.Join(", ", g.Select(n => n.Id))}");
        Assert.Empty(twice);
    }
}

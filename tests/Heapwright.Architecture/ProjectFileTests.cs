using System.Xml.Linq;

namespace Heapwright.Architecture;

public sealed class ProjectFileTests
{
    public static TheoryData<string> Present => [.. ProjectFiles.Present];

    [Theory]
    [MemberData(nameof(Present))]
    public void Project_RefersOnlyToTheLeft(string place) =>
        Assert.Empty(ProjectFiles.WrongReferences(ProjectFiles.Of(place), place));

    [Theory]
    [InlineData("Numerics", "Heapwright.Core")]
    [InlineData("Core", "Heapwright.App")]
    [InlineData("App", "Heapwright.Storage")]
    [InlineData("Storage", "Heapwright.Storage.Sqlite")]
    [InlineData("Storage.Sqlite", "Heapwright.App")]
    [InlineData("Cli", "Heapwright.Numerics")]
    [InlineData("Web", "Heapwright.Core")]
    public void Sample_WrongOnPurpose_IsCaught(string place, string reference)
    {
        var sample = Path.Combine(
            ProjectFiles.Root,
            "tests",
            "Heapwright.Architecture.WrongSample",
            "Heapwright.Architecture.WrongSample.csproj"
        );

        Assert.Contains(reference, ProjectFiles.WrongReferences(sample, place));
    }

    [Theory]
    [InlineData("Numerics")]
    [InlineData("Core")]
    public void Build_DemandsDocstrings(string place)
    {
        // Two settings make it so: the house's list of warnings that are let pass, less the one about docstrings.
        var project = XDocument.Load(ProjectFiles.Of(place));
        var house = XDocument.Load(Path.Combine(ProjectFiles.Root, "Directory.Build.props"));

        Assert.Equal(
            "$(NoWarn.Replace('CS1591', '').Replace('CS1573', ''))",
            Assert.Single(project.Descendants("NoWarn")).Value
        );
        Assert.Equal("true", Assert.Single(house.Descendants("TreatWarningsAsErrors")).Value);
        Assert.Equal("true", Assert.Single(house.Descendants("GenerateDocumentationFile")).Value);
    }
}

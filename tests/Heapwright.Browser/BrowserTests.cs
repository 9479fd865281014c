namespace Heapwright.Browser;

/// <summary>The tests with a browser take their turn, one after the other, and share the filled site.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<FilledSite>
{
    /// <summary>The name of the collection.</summary>
    public const string Name = "browser";
}

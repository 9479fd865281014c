namespace Heapwright.Core.Materials.Searching;

/// <summary>Words that people use for one another whatever the material: any poo is a manure.</summary>
internal static class WordKin
{
    // Stems, the first of each row standing for all. Common usage, no source.
    private static readonly string[][] Rows =
    [
        ["manure", "muck", "poo", "poop", "dung", "dropping", "pat"],
        ["hen", "chook", "chicken", "poultry"],
        ["cow", "cattle", "bullock", "dairy"],
        ["horse", "pony"],
        ["sheep", "lamb", "ewe"],
        ["pig", "hog", "swine"],
        ["rabbit", "bunny"],
        ["potato", "spud", "tattie"],
        ["tomato", "tom"],
        ["vegetable", "veg", "veggie", "vege"],
        ["cardboard", "card", "carton"],
        ["corn", "maize", "sweetcorn"],
        ["courgette", "zucchini", "marrow", "squash"],
        ["autumn", "fall"],
        ["clipping", "mowing", "cutting", "trimming"],
        ["lawn", "grass"],
        ["kitchen", "food"],
        ["scrap", "peeling", "waste", "leftover"],
        ["newspaper", "newsprint"],
        ["alfalfa", "lucerne"],
        ["faba", "broad", "fava"],
        ["groundnut", "peanut"],
        ["plant", "vine", "haulm", "stem", "top", "stalk"],
        ["chip", "chipping", "chipped", "woodchip"],
        ["bedding", "litter"],
        ["rotted", "rotting", "rotten", "aged", "old", "composted"],
        ["dry", "dried"],
        ["wet", "moist", "damp", "soggy"],
        ["shredded", "chopped", "mown", "shred"],
        ["soil", "dirt", "earth"],
    ];

    private static readonly Dictionary<string, string> Heads = HeadsOf(Rows);

    /// <summary>The word that stands for this one and its kin; the word itself where it has none.</summary>
    public static string Head(string stem) => Heads.TryGetValue(stem, out var head) ? head : stem;

    private static Dictionary<string, string> HeadsOf(string[][] rows)
    {
        var heads = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            foreach (var word in row)
            {
                heads.Add(word, row[0]);
            }
        }

        return heads;
    }
}

namespace Heapwright.Browser;

/// <summary>Pictures that are kept in the repository.</summary>
internal static class KeptPictures
{
    /// <summary>Whether they are made anew: HEAPWRIGHT_PICTURES=1.</summary>
    public static bool AreMade => Environment.GetEnvironmentVariable("HEAPWRIGHT_PICTURES") == "1";

    /// <summary>A folder of the repository.</summary>
    /// <param name="parts">Its path from the root.</param>
    public static string FolderOf(params string[] parts)
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Heapwright.slnx")))
        {
            at = at.Parent;
        }

        return Path.Combine([at!.FullName, .. parts]);
    }
}

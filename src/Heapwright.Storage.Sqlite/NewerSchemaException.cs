using System.Globalization;

namespace Heapwright.Storage.Sqlite;

/// <summary>The file was made by a newer version of the program; it was left alone.</summary>
public sealed class NewerSchemaException : Exception
{
    /// <summary>A file that is too new.</summary>
    /// <param name="file">The file.</param>
    /// <param name="found">Its schema number.</param>
    /// <param name="known">The highest number this program knows.</param>
    public NewerSchemaException(string file, int found, int known)
        : base(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{file} has schema {found}, made by a newer version; this one reads up to {known}. Install the newer version, or set HEAPWRIGHT_DATA to another folder. Nothing was changed."
            )
        ) { }
}

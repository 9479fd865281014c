namespace Heapwright.App.Drawings;

/// <summary>For how much room a picture is made.</summary>
public enum PictureSize
{
    /// <summary>A phone or a column: numbers and water beside the heap.</summary>
    Narrow,

    /// <summary>A page: what goes in is written beside the heap too.</summary>
    Wide,
}

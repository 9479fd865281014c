namespace Heapwright.Storage.Rows;

/// <summary>The row of a build sheet.</summary>
public sealed class SheetRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>The bay, if it is one of the site's.</summary>
    public Guid? BayId { get; set; }

    /// <summary>The recipe, if it was kept.</summary>
    public Guid? RecipeId { get; set; }

    /// <summary>When it was made, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>The question, with its schema number.</summary>
    public string QuestionJson { get; set; } = "{}";

    /// <summary>The answer, with its schema number.</summary>
    public string AnswerJson { get; set; } = "{}";

    /// <summary>The numbers of the layers done, in ascending order, with blanks between.</summary>
    public string TickedLayers { get; set; } = "";
}

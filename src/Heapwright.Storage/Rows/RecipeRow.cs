namespace Heapwright.Storage.Rows;

/// <summary>The row of a kept recipe.</summary>
public sealed class RecipeRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>When it was made, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>The question, with its schema number.</summary>
    public string QuestionJson { get; set; } = "{}";

    /// <summary>The answer, with its schema number.</summary>
    public string AnswerJson { get; set; } = "{}";
}

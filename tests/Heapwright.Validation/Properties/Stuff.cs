namespace Heapwright.Validation.Properties;

/// <summary>One ingredient of a question, as data: a material of the library, or the asker's own by its properties.</summary>
internal sealed record Stuff
{
    public string? Name { get; init; }

    public string? Material { get; init; }

    public Known? Carbon { get; init; }

    public Known? Nitrogen { get; init; }

    public Known? Moisture { get; init; }

    public Known? Density { get; init; }

    public Known? Ash { get; init; }

    public required Known Amount { get; init; }

    public required string Unit { get; init; }

    /// <summary>The ingredient in JSON, with more fields put in front where wanted.</summary>
    public string Json(string more = "")
    {
        var fields = new List<string>();
        void Add(string field, string? json)
        {
            if (json is not null)
            {
                fields.Add($"\"{field}\":{json}");
            }
        }

        Add("name", Name is null ? null : $"\"{Name}\"");
        Add("material", Material is null ? null : $"\"{Material}\"");
        Add("carbon_pct_db", Carbon?.Json());
        Add("nitrogen_pct_db", Nitrogen?.Json());
        Add("moisture_pct_wb", Moisture?.Json());
        Add("bulk_density_kg_m3", Density?.Json());
        Add("ash_pct_db", Ash?.Json());
        Add("amount", $$"""{"value":{{Amount.Json()}},"unit":"{{Unit}}"}""");
        return $"{{{more}{string.Join(',', fields)}}}";
    }
}

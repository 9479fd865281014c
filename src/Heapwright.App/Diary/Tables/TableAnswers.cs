using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using Heapwright.Core.Reasons;
using NodaTime;

namespace Heapwright.App.Diary.Tables;

/// <summary>What is told of a table before it is brought in.</summary>
public static class TableAnswers
{
    /// <summary>How a table would be read, with its first rows.</summary>
    /// <param name="form">How it is written.</param>
    /// <param name="rows">The first rows.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="measures">The units and number format of the text.</param>
    public static Answer Preview(
        TableForm form,
        ImmutableArray<(long Line, ImmutableArray<DiaryEntry> Entries, Reason? Why)> rows,
        KeptHeap heap,
        Measures measures
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(heap);
        var text = new List<string>
        {
            Words.Of(
                "diary.preview_form",
                null,
                form.Separator == '\t' ? Words.Of("diary.preview_tab") : form.Separator.ToString(),
                Words.Of(form.HasHeader ? "diary.preview_header" : "diary.preview_no_header"),
                Words.Of(form.DecimalComma ? "diary.preview_comma" : "diary.preview_point"),
                Words.Of(
                    form.UnitIsSaid ? "diary.preview_unit_said" : "diary.preview_unit_guessed",
                    null,
                    Words.Of(form.Fahrenheit ? "diary.unit_f" : "diary.unit_c")
                )
            ),
        };
        var columns = new JsonArray();
        foreach (var (name, role) in form.Names.Zip(form.Roles))
        {
            var word = role?.ToString().ToLowerInvariant();
            columns.Add((JsonNode)new JsonObject { ["name"] = name, ["read_as"] = word });
            text.Add(
                Words.Of(
                    "diary.preview_column",
                    null,
                    name,
                    Words.Of(word is null ? "diary.preview_unread" : "diary.role_" + word)
                )
            );
        }

        text.Add(Words.Of("diary.preview_rows"));
        text.AddRange(
            rows.Select(r =>
                Words.Of(
                    "diary.preview_line",
                    null,
                    r.Line,
                    r.Why is { } why
                        ? Words.Of("diary.refused", null, measures.Say(why))
                        : string.Join(
                            "; ",
                            r.Entries.Select(e =>
                                DiaryAnswers.Local(
                                    Instant.FromDateTimeOffset(e.At),
                                    heap.TimeZone()
                                )
                                + "  "
                                + EntryText.Of(e, measures)
                            )
                        )
                )
            )
        );
        text.Add(Words.Of("diary.preview_nothing"));
        return new Answer(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["separator"] = form.Separator.ToString(),
                ["header"] = form.HasHeader,
                ["decimal_comma"] = form.DecimalComma,
                ["unit"] = form.Fahrenheit ? "f" : "c",
                ["unit_is_said"] = form.UnitIsSaid,
                ["columns"] = columns,
                ["rows"] = new JsonArray([
                    .. rows.Select(r => new JsonObject
                    {
                        ["line"] = r.Line,
                        ["why"] = r.Why is { } why ? measures.Say(why) : null,
                        ["entries"] = new JsonArray([
                            .. r.Entries.Select(e => JsonNode.Parse(EntryJson.Said(e))),
                        ]),
                    }),
                ]),
            },
            Yes: true,
            string.Join('\n', text)
        );
    }
}

using Heapwright.App.Library;

namespace Heapwright.App.Tests.Library;

/// <summary>Examples after RFC 4180, section 2 (printed).</summary>
public sealed class CsvTableTests
{
    [Fact]
    public void Cells_PlainQuotedAndEmpty_AreRead()
    {
        var table = new CsvTable(
            "a,b,c\r\n1,\"two, \"\"or\"\" three\",\n,\"line\nbreak\",3",
            "x.csv"
        );

        Assert.Equal(2, table.Count);
        var rows = table.Rows.ToArray();
        Assert.Equal(
            ["1", "two, \"or\" three", ""],
            new[] { rows[0]["a"], rows[0]["b"], rows[0]["c"] }
        );
        Assert.Equal(["", "line\nbreak", "3"], new[] { rows[1]["a"], rows[1]["b"], rows[1]["c"] });
        Assert.Throws<ArgumentException>(() => rows[0]["d"]);
    }

    [Theory]
    [InlineData("", "x.csv: is empty")]
    [InlineData("a,b\n1\n", "x.csv: row 2 has 1 cells; the header has 2")]
    [InlineData("a,b\n1,\"2\n", "x.csv: the quote at character 7 is not closed")]
    [InlineData("a,b\n\"1\"x,2\n", "x.csv: something stands behind a closing quote at character 8")]
    public void Table_ThatIsNone_IsRefused(string text, string sentence) =>
        Assert.Equal(
            sentence,
            Assert.Throws<InvalidDataException>(() => new CsvTable(text, "x.csv")).Message
        );
}

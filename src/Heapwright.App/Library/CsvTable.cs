namespace Heapwright.App.Library;

/// <summary>
/// A data file with a header row, as RFC 4180 has it: commas, cells in quotes where they hold a comma, a quote or a line
/// break. Written by hand: the files are our own, and reading them is most of what a short command waits for, so nothing
/// may be compiled at run time for it and a cell becomes a string only when it is asked for.
/// </summary>
internal sealed class CsvTable
{
    private readonly string text;
    private readonly string[] header;
    private const int LettersPerEnd = 5; // or more, in most of our files

    private readonly List<int> cells;

    /// <summary>Reads a table.</summary>
    /// <param name="text">The file.</param>
    /// <param name="name">Its name, for faults.</param>
    /// <exception cref="InvalidDataException">It is empty, a row has too few or too many cells, or a quote is not closed.</exception>
    public CsvTable(string text, string name)
    {
        this.text = text;
        cells = new List<int>(text.Length / LettersPerEnd);
        var place = 0;
        var first = new List<int>();
        ReadRow(ref place, first, name);
        header = new string[first.Count / 2];
        for (var i = 0; i < header.Length; i++)
        {
            header[i] = Cell(first[2 * i], first[(2 * i) + 1]);
        }

        while (place < text.Length)
        {
            var before = cells.Count;
            ReadRow(ref place, cells, name);
            if (cells.Count - before != first.Count)
            {
                throw new InvalidDataException(
                    $"{name}: row {(before / first.Count) + 2} has {(cells.Count - before) / 2} cells; the header has {header.Length}"
                );
            }
        }
    }

    /// <summary>How many rows there are besides the header.</summary>
    public int Count => header.Length == 0 ? 0 : cells.Count / 2 / header.Length;

    /// <summary>The rows.</summary>
    public IEnumerable<CsvRow> Rows
    {
        get
        {
            for (var i = 0; i < Count; i++)
            {
                yield return new CsvRow(this, i);
            }
        }
    }

    /// <summary>One cell.</summary>
    /// <param name="row">The row, from 0.</param>
    /// <param name="column">The name of its column.</param>
    /// <exception cref="ArgumentException">No column has this name.</exception>
    public string Cell(int row, string column)
    {
        for (var i = 0; i < header.Length; i++)
        {
            if (string.Equals(header[i], column, StringComparison.Ordinal))
            {
                var at = 2 * ((row * header.Length) + i);
                return Cell(cells[at], cells[at + 1]);
            }
        }

        throw new ArgumentException("there is no column " + column, nameof(column));
    }

    // A cell in quotes is kept with its opening quote, so that it is known as one.
    private string Cell(int start, int end) =>
        start == end ? ""
        : text[start] != '"' ? text[start..end]
        : text[(start + 1)..(end - 1)].Replace("\"\"", "\"", StringComparison.Ordinal);

    private void ReadRow(ref int place, List<int> into, string name)
    {
        if (text.Length == 0)
        {
            throw new InvalidDataException(name + ": is empty");
        }

        while (true)
        {
            var start = place;
            if (place < text.Length && text[place] == '"')
            {
                place = AfterQuotes(place, name);
            }
            else
            {
                while (place < text.Length && text[place] is not (',' or '\r' or '\n'))
                {
                    place++;
                }
            }

            into.Add(start);
            into.Add(place);
            if (place < text.Length && text[place] == ',')
            {
                place++;
                continue;
            }

            if (place < text.Length && text[place] == '\r')
            {
                place++;
            }

            if (place < text.Length && text[place] == '\n')
            {
                place++;
            }
            else if (place < text.Length)
            {
                throw new InvalidDataException(
                    $"{name}: something stands behind a closing quote at character {place + 1}"
                );
            }

            return;
        }
    }

    private int AfterQuotes(int place, string name)
    {
        var i = place + 1;
        while (i < text.Length)
        {
            if (text[i] != '"')
            {
                i++;
            }
            else if (i + 1 < text.Length && text[i + 1] == '"')
            {
                i += 2;
            }
            else
            {
                return i + 1;
            }
        }

        throw new InvalidDataException($"{name}: the quote at character {place + 1} is not closed");
    }
}

namespace Heapwright.Validation.Fuzzing;

/// <summary>A question whose bytes were broken: cut off, overwritten, doubled, or garbage from the start.</summary>
internal static class ByteMutation
{
    private static readonly byte[][] Pieces =
    [
        [0xEF, 0xBB, 0xBF],
        [0xFF, 0xFE],
        [0x00],
        [0xC3, 0x28],
        [0xED, 0xA0, 0x80],
        [0xF4, 0x90, 0x80, 0x80],
        "\"\\ud83c\""u8.ToArray(),
        "//"u8.ToArray(),
        "/*"u8.ToArray(),
        "NaN"u8.ToArray(),
        "-"u8.ToArray(),
        "1e"u8.ToArray(),
        "}"u8.ToArray(),
        "]"u8.ToArray(),
        "{"u8.ToArray(),
        "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["u8.ToArray(),
        ","u8.ToArray(),
        ":"u8.ToArray(),
        "\""u8.ToArray(),
        "\\"u8.ToArray(),
        "\n"u8.ToArray(),
    ];

    public static byte[] Of(byte[] question, Random random)
    {
        var at = random.Next(question.Length + 1);
        switch (random.Next(8))
        {
            case 0:
                return question[..at];
            case 1:
                var garbage = new byte[random.Next(200)];
                random.NextBytes(garbage);
                return garbage;
            case 2:
                return [.. question, .. question];
            case 3:
                return [0xEF, 0xBB, 0xBF, .. question];
            case 4:
                byte[] flipped = [.. question];
                for (var i = random.Next(1, 4); i > 0; i--)
                {
                    flipped[random.Next(flipped.Length)] = (byte)random.Next(256);
                }

                return flipped;
            case 5:
                var end = Math.Min(question.Length, at + random.Next(20));
                return [.. question[..at], .. question[end..]];
            default:
                return
                [
                    .. question[..at],
                    .. Pieces[random.Next(Pieces.Length)],
                    .. question[at..],
                ];
        }
    }
}

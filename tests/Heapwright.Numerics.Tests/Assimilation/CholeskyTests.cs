using Heapwright.Numerics.Assimilation;

namespace Heapwright.Numerics.Tests.Assimilation;

public class CholeskyTests
{
    // Worked by hand: L = [2; 1 3; 3 -1 2].
    private static readonly double[,] Matrix =
    {
        { 4, 2, 6 },
        { 2, 10, 0 },
        { 6, 0, 14 },
    };

    [Fact]
    public void Solve_KnownSystem_GivesItsSolution()
    {
        double[] x = [4 + 4 + 18, 2 + 20 + 0, 6 + 0 + 42]; // A · (1, 2, 3)

        Cholesky.Of(Matrix).Solve(x);

        Assert.Equal([1, 2, 3], x.Select(v => Math.Round(v, 12)));
    }

    [Fact]
    public void Times_KnownTriangle_IsItsProduct() =>
        Assert.Equal(
            [2, 1 + 3, 3 - 1 + 2],
            Cholesky.Of(Matrix).Times([1, 1, 1]).Select(v => Math.Round(v, 12))
        );

    [Fact]
    public void Of_NotPositiveDefinite_IsRefused() =>
        Assert.Throws<ArithmeticException>(() =>
            Cholesky.Of(
                new double[,]
                {
                    { 1, 2 },
                    { 2, 1 },
                }
            )
        );

    [Fact]
    public void Of_NotSquare_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Cholesky.Of(new double[2, 3]));
}

namespace Heapwright.Numerics.Search;

/// <summary>Order statistics without sorting everything.</summary>
internal static class Selection
{
    /// <summary>The value of the given rank (0 is the smallest); reorders the span.</summary>
    internal static double Smallest(Span<double> values, int rank)
    {
        int low = 0;
        int high = values.Length - 1;
        while (low < high)
        {
            double pivot = Median(values[low], values[(low + high) / 2], values[high]);
            int i = low;
            int j = high;
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (values[j] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }

            if (rank <= j)
            {
                high = j;
            }
            else if (rank >= i)
            {
                low = i;
            }
            else
            {
                break;
            }
        }

        return values[rank];
    }

    private static double Median(double a, double b, double c) =>
        Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
}

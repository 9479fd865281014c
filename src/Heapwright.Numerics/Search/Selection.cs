using System.Numerics;

namespace Heapwright.Numerics.Search;

/// <summary>Order statistics without sorting everything.</summary>
internal static class Selection
{
    /// <summary>The value of the given rank (0 is the smallest); reorders the span.</summary>
    internal static T Smallest<T>(Span<T> values, int rank)
        where T : unmanaged, IBinaryFloatingPointIeee754<T>
    {
        int low = 0;
        int high = values.Length - 1;
        while (low < high)
        {
            T pivot = Median(values[low], values[(low + high) / 2], values[high]);
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

    private static T Median<T>(T a, T b, T c)
        where T : unmanaged, IBinaryFloatingPointIeee754<T> =>
        T.Max(T.Min(a, b), T.Min(T.Max(a, b), c));
}

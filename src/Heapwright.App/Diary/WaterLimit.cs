using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.Core.Mixtures;

namespace Heapwright.App.Diary;

/// <summary>The most water a heap can be given in one go.</summary>
internal static class WaterLimit
{
    private const double TimesItsVolume = 10;
    private const double WhereNotKnown = 5000; // litres

    /// <summary>Litres: ten times what the heap was built of, fixed where that is not known.</summary>
    /// <param name="kept">The heap.</param>
    public static double Litres(KeptHeap kept)
    {
        try
        {
            var heap = HeapReader.Read(kept);
            var filled = Mixture
                .Of(
                    new MixtureQuestion
                    {
                        Ingredients = [.. heap.Ingredients],
                        Water = heap.WaterLitres,
                    }
                )
                .Typical.FilledVolume;
            return filled > 0 ? TimesItsVolume * filled : WhereNotKnown;
        }
        catch (InputProblem)
        {
            return WhereNotKnown;
        }
    }
}

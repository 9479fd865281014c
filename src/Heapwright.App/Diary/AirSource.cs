namespace Heapwright.App.Diary;

/// <summary>Where the air temperature of a forecast comes from.</summary>
public enum AirSource
{
    /// <summary>Nothing was said: it is assumed.</summary>
    Assumed,

    /// <summary>From the mean of what was noted in the diary.</summary>
    Noted,

    /// <summary>From the monthly means of the site.</summary>
    MonthlyMeans,

    /// <summary>From the monthly means of the site, moved towards what was noted in the diary.</summary>
    MonthlyMeansAndNotes,

    /// <summary>It was told with the heap.</summary>
    Told,
}

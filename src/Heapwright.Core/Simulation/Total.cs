namespace Heapwright.Core.Simulation;

/// <summary>What is summed over the life of a heap so that its balances can be closed; masses in kg, heat in J.</summary>
public enum Total
{
    /// <summary>Water that left as vapour, less what condensed from the air.</summary>
    VapourOut,

    /// <summary>Water that came with rain or by hand.</summary>
    WaterIn,

    /// <summary>Water that drained away.</summary>
    DrainedOut,

    /// <summary>Water made by rotting.</summary>
    WaterMade,

    /// <summary>Carbon that left as carbon dioxide.</summary>
    CarbonOut,

    /// <summary>Nitrogen that left as ammonia.</summary>
    AmmoniaOut,

    /// <summary>Nitrogen that drained away.</summary>
    NitrogenDrained,

    /// <summary>Heat made by rotting.</summary>
    HeatMade,

    /// <summary>Heat content of the matter that vanished, less that of the water it became.</summary>
    MatterHeatOut,

    /// <summary>Heat that left with vapour.</summary>
    LatentOut,

    /// <summary>Heat that left through surfaces.</summary>
    SurfaceOut,

    /// <summary>Heat that left with dry air.</summary>
    AirOut,

    /// <summary>Heat that came with water, less what left with it.</summary>
    WaterHeatIn,
}

namespace Heapwright.Core.Simulation;

/// <summary>
/// The parameters of the simulation, in the order of data/parameters.csv, which gives each its unit, usual value,
/// prior, range, source and kind; docs/models/heap.md shows them beside the equations.
/// </summary>
public enum HeapParameter
{
    /// <summary>Rate of the fast pool at the best temperature, 1/d.</summary>
    FastRate,

    /// <summary>Rate of the slow pool at the best temperature, 1/d.</summary>
    SlowRate,

    /// <summary>Rate of the lignin-rich pool at the best temperature, 1/d.</summary>
    LigninRate,

    /// <summary>Lowest temperature of the heat-loving microbes, °C.</summary>
    HeatLowest,

    /// <summary>Best temperature of the heat-loving microbes, °C.</summary>
    HeatBest,

    /// <summary>Highest temperature of the heat-loving microbes, °C.</summary>
    HeatHighest,

    /// <summary>Lowest temperature of the cool microbes, °C.</summary>
    CoolLowest,

    /// <summary>Best temperature of the cool microbes, °C.</summary>
    CoolBest,

    /// <summary>Highest temperature of the cool microbes, °C.</summary>
    CoolHighest,

    /// <summary>Weight of the cool microbes, 0 to 1.</summary>
    CoolWeight,

    /// <summary>Activity at the start, 0 to 1.</summary>
    StartActivity,

    /// <summary>Growth rate of the activity at the best temperature, 1/d.</summary>
    ActivityGrowth,

    /// <summary>Rate at which activity is lost at 70 °C, 1/d.</summary>
    HeatKill,

    /// <summary>Activity that seeps in from spores and the cooler rim, 1/d.</summary>
    ActivitySeed,

    /// <summary>Moisture at which water halves the rate, kg/kg wet.</summary>
    DryMidpoint,

    /// <summary>Steepness of the response to moisture, per kg/kg wet.</summary>
    DrySteepness,

    /// <summary>Mole fraction of oxygen at which the rate is halved.</summary>
    OxygenHalf,

    /// <summary>Exponent of the effect of particle size.</summary>
    SizeExponent,

    /// <summary>Particle size at which the rates hold, mm.</summary>
    SizeReference,

    /// <summary>Oxygen used, kg per kg of matter rotted.</summary>
    OxygenDemand,

    /// <summary>Heat made, J per kg of oxygen.</summary>
    OxygenHeat,

    /// <summary>Water made, kg per kg of matter rotted.</summary>
    MetabolicWater,

    /// <summary>Share of rotted carbon that passes through microbes.</summary>
    Yield,

    /// <summary>Carbon to nitrogen ratio of microbes.</summary>
    MicrobeRatio,

    /// <summary>Share of the rate that is left without any nitrogen.</summary>
    NitrogenFloor,

    /// <summary>Mineral nitrogen that microbes can take up, share per day.</summary>
    MineralUptake,

    /// <summary>Microbial nitrogen released again, share per day.</summary>
    MicrobeDecay,

    /// <summary>Ammonia held back by sorption: total over dissolved.</summary>
    AmmoniaHeld,

    /// <summary>pH at the start.</summary>
    AcidityStart,

    /// <summary>Rise of pH.</summary>
    AcidityRise,

    /// <summary>Share of the fast pool used at which the pH has made 63 % of its rise.</summary>
    AcidityPace,

    /// <summary>Share of the nitrogen of a material that sits in its fast pool.</summary>
    FastNitrogen,

    /// <summary>Share of the nitrogen of a material that sits in its slow pool.</summary>
    SlowNitrogen,

    /// <summary>Share of the nitrogen that is mineral at the start.</summary>
    StartMineral,

    /// <summary>Share of the nitrogen that is in microbes at the start.</summary>
    StartMicrobe,

    /// <summary>Heat capacity of dry matter, J/kgK.</summary>
    SolidHeat,

    /// <summary>Conductivity without water, W/mK.</summary>
    DryConductivity,

    /// <summary>Conductivity added per share of volume that is water, W/mK.</summary>
    WetConductivity,

    /// <summary>Factor on the heat transfer at surfaces.</summary>
    SurfaceFactor,

    /// <summary>Factor on the thermal resistance of walls and covers.</summary>
    WallFactor,

    /// <summary>Thermal resistance of the ground, m²K/W.</summary>
    GroundResistance,

    /// <summary>Permeability at half air space, m².</summary>
    Permeability,

    /// <summary>Highest multiple of that permeability.</summary>
    PermeabilityCap,

    /// <summary>Lowest multiple of that permeability: cracks and channels.</summary>
    PermeabilityFloor,

    /// <summary>Standard deviation of the air space from place to place.</summary>
    AirSpaceSpread,

    /// <summary>Openness of the base to air, 0 to 1.</summary>
    BaseOpenness,

    /// <summary>Factor on the openness of walls and covers.</summary>
    EntryFactor,

    /// <summary>Diffusivity of water by capillary action, m²/d.</summary>
    CapillaryDiffusivity,

    /// <summary>Water held against gravity, kg per kg dry.</summary>
    HoldingCapacity,

    /// <summary>Time in which water above that drains, d.</summary>
    DrainTime,

    /// <summary>Built volume over the filled volume of the mixture.</summary>
    BuiltVolume,

    /// <summary>Compaction under a great load, share.</summary>
    Compaction,

    /// <summary>Load that gives half of it, Pa.</summary>
    CompactionLoad,

    /// <summary>Factor on the settling that structure allows.</summary>
    SettleFactor,

    /// <summary>Time constant of settling, d.</summary>
    SettleTime,

    /// <summary>Share of the excess heat lost when a heap is turned.</summary>
    TurnCooling,

    /// <summary>Share of that loss that goes as vapour.</summary>
    TurnVapour,

    /// <summary>Time in which the air in the pores follows its balance, d.</summary>
    OxygenTime,

    /// <summary>Air space that lets no air pass, being closed or in dead ends; of the volume, 0 to 1.</summary>
    ClosedAirSpace,
}

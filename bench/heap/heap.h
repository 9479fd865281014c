/* A heap of one member: its geometry, surroundings, matter and parameters, and its rates of change. */
#ifndef HEAP_H
#define HEAP_H

#include <stddef.h>

enum { MOST_RINGS = 12, MOST_ZONES = 144, PER_ZONE = 9, FIXED_PER_ZONE = 9 };

/* The states of a zone. */
enum state { HEAT, FAST, SLOW, LIGNIN, WATER, MINERAL, MICROBE, ACTIVITY, OXYGEN };

/* What is fixed for a zone. */
enum fixed {
    ASH, BULK, SETTLING, SIZE, PASSAGE, FAST_NITROGEN, SLOW_NITROGEN, LIGNIN_NITROGEN, FAST_AT_START
};

/* In the order of HeapParameter.cs; the check of the rates would find a difference. */
enum parameter {
    FastRate,
    SlowRate,
    LigninRate,
    HeatLowest,
    HeatBest,
    HeatHighest,
    CoolLowest,
    CoolBest,
    CoolHighest,
    CoolWeight,
    StartActivity,
    ActivityGrowth,
    HeatKill,
    ActivitySeed,
    DryMidpoint,
    DrySteepness,
    OxygenHalf,
    SizeExponent,
    SizeReference,
    OxygenDemand,
    OxygenHeat,
    MetabolicWater,
    Yield,
    MicrobeRatio,
    NitrogenFloor,
    MineralUptake,
    MicrobeDecay,
    AmmoniaHeld,
    AcidityStart,
    AcidityRise,
    AcidityPace,
    FastNitrogen,
    SlowNitrogen,
    StartMineral,
    StartMicrobe,
    SolidHeat,
    DryConductivity,
    WetConductivity,
    SurfaceFactor,
    WallFactor,
    GroundResistance,
    Permeability,
    PermeabilityCap,
    PermeabilityFloor,
    AirSpaceSpread,
    BaseOpenness,
    EntryFactor,
    CapillaryDiffusivity,
    HoldingCapacity,
    DrainTime,
    BuiltVolume,
    Compaction,
    CompactionLoad,
    SettleFactor,
    SettleTime,
    TurnCooling,
    TurnVapour,
    OxygenTime,
    ClosedAirSpace,
    PARAMETERS
};

struct barrier { double resistance, openness, evaporation, shed; };

struct heap {
    int rings, layers, zones, has_sides;
    double plan[MOST_RINGS], top[MOST_RINGS], perimeter[MOST_RINGS]; /* m², m², m */
    double inward[MOST_RINGS], outward[MOST_RINGS];                  /* m from a centre to a face */
    double core[MOST_ZONES];                                         /* weights of the core */
    double least_distance;                                           /* m, between zones above one another */
    double air, wind, rain, humidity, sun, swing, start_hour, ground;
    struct barrier wall, cover;
    double p[PARAMETERS], carbon[3], fixed[MOST_ZONES * FIXED_PER_ZONE];
    long evaluations;
};

/* Rates per day of all states, [zone * 9 + state], at a time in days. */
void heap_rates(struct heap *h, double time, const double *y, double *rate);

/* Temperature of the core, degrees C. */
double heap_core(const struct heap *h, const double *y);

/* Heat capacity of a zone, J/K. */
double heap_capacity(const struct heap *h, const double *y, int zone);

/* The file of members that the program writes. */
struct heap_file {
    int members, checks, zones;
    double days, look_every;
    struct heap *heap;      /* [member] */
    double *start;          /* [member][zone * 9] */
    double *check;          /* [member][check]: time, states, rates */
};

int heap_read(const char *path, struct heap_file *file);

/* For callers that cannot see the structs. */
struct heap_file *heap_open(const char *path);
int heap_members(const struct heap_file *file);
int heap_states(const struct heap_file *file);
double heap_days(const struct heap_file *file);
double heap_look_every(const struct heap_file *file);
struct heap *heap_member(struct heap_file *file, int member);
const double *heap_start(const struct heap_file *file, int member);
long heap_evaluations(const struct heap *h);

#endif

/* The equations of docs/models/heap.md in C for one member: what src/Heapwright.Core/Simulation/HeapBlock computes for
 * eight at a time, without the sums that close the balances. */
#include "heap.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define DAY 86400.0
#define WATER_HEAT 4186.0
#define ICE_HEAT 2100.0
#define FUSION 334000.0
#define GRAVITY 9.81
#define AIR_MASS 1.05
#define VISCOSITY 1.95e-5
#define PRESSURE 101325.0
#define DRY_GAS 287.05
#define VAPOUR_GAS 461.5
#define DRY_HEAT 1006.0
#define EVAPORATION 2.501e6
#define VAPOUR_HEAT 1860.0
#define VAPOUR_OVER_OXYGEN 1.25
#define LOG2E 1.4426950408889634
#define LOG2_10 3.321928094887362

static inline double most(double a, double b) { return a > b ? a : b; }
static inline double least(double a, double b) { return a < b ? a : b; }

/* Magnus's formula as the polynomial that the program uses. */
static inline double saturation(double celsius)
{
    double t = least(most((celsius - 30) * (1 / 70.0), -1), 1);
    double p = -0.007356338962562033;
    p = p * t + 0.0282144214816755;
    p = p * t - 0.0971787731185503;
    p = p * t + 0.37977200203269945;
    p = p * t - 1.4877646170944112;
    p = p * t + 5.8028624368240616;
    p = p * t + 12.048712160918393;
    return exp2(p);
}

static inline double cardinal(double t, double lowest, double best, double highest)
{
    double above = t - lowest, span = best - lowest;
    double up = (t - highest) * above * above;
    double down = span * (span * (t - best) - (best - highest) * (best + lowest - 2 * t));
    return t > lowest && t < highest ? up / down : 0;
}

static inline double vapour_content(double t) { return EVAPORATION + VAPOUR_HEAT * t; }

/* What the equations know of the zones at one evaluation. */
struct zones {
    double celsius[MOST_ZONES], warmth[MOST_ZONES], dry[MOST_ZONES], ratio[MOST_ZONES];
    double thickness[MOST_ZONES], inverse_volume[MOST_ZONES], diffusivity[MOST_ZONES];
    double resistance[MOST_ZONES], conductivity[MOST_ZONES];
    double vapour_density[MOST_ZONES], humidity[MOST_ZONES], density[MOST_ZONES];
    double use[MOST_ZONES], ammonia[MOST_ZONES], in[MOST_ZONES], ways[MOST_ZONES];
    double up[MOST_ZONES], out[MOST_ZONES], base[MOST_RINGS], top[MOST_RINGS], side[MOST_ZONES];
};

struct outside { double air, density, vapour_density, humidity; };

static void warm(const struct heap *h, const double *y, struct zones *s)
{
    for (int z = 0; z < h->zones; z++) {
        const double *q = y + z * PER_ZONE;
        double dry = q[FAST] + q[SLOW] + q[LIGNIN] + h->fixed[z * FIXED_PER_ZONE + ASH];
        double solids = dry * h->p[SolidHeat];
        double t = q[HEAT] / (q[WATER] * WATER_HEAT + solids);
        s->dry[z] = dry;
        s->ratio[z] = q[WATER] / dry;
        s->warmth[z] = t;
        double ice = least(q[HEAT] + q[WATER] * FUSION, 0);
        s->celsius[z] = q[HEAT] < 0 ? ice / (q[WATER] * ICE_HEAT + solids) : t;
    }
}

static void press(const struct heap *h, double time, const double *y, struct zones *s)
{
    const double *p = h->p;
    double settled = 1 - exp(-time / p[SettleTime]);
    double variance = p[AirSpaceSpread] * p[AirSpaceSpread];
    for (int r = 0; r < h->rings; r++) {
        double stress = 0, inverse_plan = 1 / h->plan[r];
        for (int k = h->layers - 1; k >= 0; k--) {
            int z = k * h->rings + r;
            const double *f = h->fixed + z * FIXED_PER_ZONE;
            double water = y[z * PER_ZONE + WATER], dry = s->dry[z];
            double weight = (dry + water) * GRAVITY * inverse_plan;
            double middle = stress + weight / 2;
            stress += weight;
            double denser = (1 + p[Compaction] * middle / (middle + p[CompactionLoad]))
                * (1 + f[SETTLING] * settled);
            double matter = (dry - f[ASH]) * (1 / 1600.0) + f[ASH] * (1 / 2500.0) + water * 1e-3;
            double gaps = most(dry * f[BULK] - matter, 0) / denser;
            double inverse = 1 / (matter + gaps);
            s->inverse_volume[z] = inverse;
            s->thickness[z] = (matter + gaps) * inverse_plan;
            double wet = water * inverse * 1e-3;
            double air = gaps * inverse, square = air * air;
            s->diffusivity[z] = 2e-5 * (square + variance) * (0.876 + 0.0062 * s->celsius[z]);
            double grain = 1 - air;
            double open = most(air - p[ClosedAirSpace], 0) / (0.5 - p[ClosedAirSpace]);
            double shape = 0.25 * open * open * open / (grain * grain);
            shape = least(shape, p[PermeabilityCap]) + p[PermeabilityFloor];
            s->resistance[z] = 1 / (p[Permeability] * shape * f[PASSAGE]);
            s->conductivity[z] = p[DryConductivity] + p[WetConductivity] * wet;
        }
    }
}

static void moisten(const struct heap *h, struct zones *s)
{
    for (int z = 0; z < h->zones; z++) {
        double square = s->ratio[z] * s->ratio[z];
        double vapour = least(saturation(s->celsius[z]) * square / (square + 0.01), 0.8 * PRESSURE);
        double inverse_kelvin = 1 / (s->celsius[z] + 273.15);
        s->vapour_density[z] = vapour * inverse_kelvin * (1 / VAPOUR_GAS);
        s->humidity[z] = 0.622 * vapour / (PRESSURE - vapour);
        s->density[z] = inverse_kelvin * (PRESSURE / DRY_GAS - vapour * (0.378 / DRY_GAS));
    }
}

static void blow(const struct heap *h, const struct outside *now, struct zones *s)
{
    double band[MOST_ZONES * (MOST_RINGS + 1)], pressure[MOST_ZONES], pivot[MOST_ZONES];
    double up_ease[MOST_ZONES], out_ease[MOST_ZONES], lift[MOST_ZONES];
    const double ease = AIR_MASS / VISCOSITY;
    int rings = h->rings, zones = h->zones, width = rings + 1;
    double top = least(h->p[EntryFactor] * h->cover.openness, 1);
    double side = least(h->p[EntryFactor] * h->wall.openness, 1);
    memset(band, 0, sizeof(double) * (size_t)(zones * width));
    memset(pressure, 0, sizeof(double) * (size_t)zones);
    for (int z = 0; z < zones; z++)
        lift[z] = (now->density - s->density[z]) * s->thickness[z] * (0.5 * GRAVITY);
    for (int k = 0, z = 0; k < h->layers; k++) {
        for (int r = 0; r < rings; r++, z++) {
            double across = s->thickness[z] * 0.5 * s->resistance[z];
            if (k == 0) {
                double g = h->p[BaseOpenness] * h->plan[r] * ease / across;
                s->base[r] = g;
                band[z * width] += g;
                pressure[z] += g * lift[z];
            }
            if (k == h->layers - 1) {
                double g = top * h->top[r] * ease / across;
                s->top[r] = g;
                band[z * width] += g;
                pressure[z] -= g * lift[z];
            } else {
                int above = z + rings;
                double g = h->plan[r] * ease
                    / (across + s->thickness[above] * 0.5 * s->resistance[above]);
                double push = g * (lift[z] + lift[above]);
                up_ease[z] = g;
                s->up[z] = push;
                band[z * width] += g;
                band[above * width] += g;
                band[above * width + rings] -= g;
                pressure[z] -= push;
                pressure[above] += push;
            }
            if (r < rings - 1) {
                double g = h->perimeter[r] * 0.5 * ease * (s->thickness[z] + s->thickness[z + 1])
                    / (h->inward[r] * s->resistance[z] + h->outward[r] * s->resistance[z + 1]);
                out_ease[z] = g;
                band[z * width] += g;
                band[(z + 1) * width] += g;
                band[(z + 1) * width + 1] -= g;
            } else if (h->has_sides) {
                double g = side * h->perimeter[r] * ease * s->thickness[z]
                    / (h->inward[r] * s->resistance[z]);
                s->side[k] = g;
                band[z * width] += g;
            }
        }
    }
    /* Symmetric band system by LDL'. */
    for (int i = 0; i < zones; i++) {
        int first = i > rings ? i - rings : 0;
        double *row = band + i * width, diagonal = row[0], right = pressure[i];
        for (int j = first; j < i; j++) {
            double u = row[i - j];
            for (int m = first > j - rings ? first : j - rings; m < j; m++)
                u -= row[i - m] * band[j * width + j - m];
            row[i - j] = u;
        }
        for (int j = first; j < i; j++) {
            double u = row[i - j], l = u * pivot[j];
            diagonal -= u * l;
            right -= l * pressure[j];
            row[i - j] = l;
        }
        pivot[i] = 1 / diagonal;
        pressure[i] = right;
    }
    for (int i = zones - 1; i >= 0; i--) {
        double q = pressure[i] * pivot[i];
        int last = i + rings < zones - 1 ? i + rings : zones - 1;
        for (int j = i + 1; j <= last; j++)
            q -= band[j * width + j - i] * pressure[j];
        pressure[i] = q;
    }
    for (int k = 0, z = 0; k < h->layers; k++) {
        for (int r = 0; r < rings; r++, z++) {
            double q = pressure[z];
            if (k == 0)
                s->base[r] *= lift[z] - q;
            if (k == h->layers - 1)
                s->top[r] *= q + lift[z];
            else
                s->up[z] += up_ease[z] * (q - pressure[z + rings]);
            if (r < rings - 1)
                s->out[z] = out_ease[z] * (q - pressure[z + 1]);
            else if (h->has_sides)
                s->side[k] *= q;
        }
    }
}

static void rot(const struct heap *h, const double *y, struct zones *s, double *rate)
{
    const double *p = h->p;
    double floor = p[NitrogenFloor], pace = LOG2E / p[AcidityPace];
    double need_per_carbon = p[Yield] / p[MicrobeRatio];
    double heat_per_matter = p[OxygenHeat] * p[OxygenDemand];
    for (int z = 0; z < h->zones; z++) {
        const double *q = y + z * PER_ZONE, *f = h->fixed + z * FIXED_PER_ZONE;
        double *d = rate + z * PER_ZONE;
        double oxygen = most(q[OXYGEN], 0), t = s->warmth[z];
        double hot = cardinal(t, p[HeatLowest], p[HeatBest], p[HeatHighest]);
        double cool = cardinal(t, p[CoolLowest], p[CoolBest], p[CoolHighest]);
        double warmth = hot + p[CoolWeight] * cool * (1 - hot);
        double moisture = q[WATER] / (q[WATER] + s->dry[z]);
        double damp = 1 / (1 + exp2((moisture - p[DryMidpoint]) * p[DrySteepness] * -LOG2E));
        double aired = oxygen / (oxygen + p[OxygenHalf]);
        double pull = warmth * damp * q[ACTIVITY], sized = pull * f[SIZE];
        double fast = p[FastRate] * pull * q[FAST];
        double slow = p[SlowRate] * sized * q[SLOW];
        double lignin = p[LigninRate] * sized * q[LIGNIN];
        double carbon = h->carbon[0] * fast + h->carbon[1] * slow + h->carbon[2] * lignin;
        double freed = f[FAST_NITROGEN] * fast + f[SLOW_NITROGEN] * slow + f[LIGNIN_NITROGEN] * lignin;
        double need = need_per_carbon * carbon;
        double deficit = most(need - freed, 0), excess = most(freed - need, 0);
        double recycled = p[MicrobeDecay] * warmth * q[MICROBE];
        double supply = recycled + p[MineralUptake] * q[MINERAL];
        double cover = least(supply / (deficit + 1e-12), 1e6), square = cover * cover;
        double met = cover / sqrt(sqrt(square * square + 1));
        double fed = floor + (1 - floor) * met, taken = least(fed * deficit, supply);
        double share = fed * aired, all = fast + slow + lignin, rotted = all * share;
        s->use[z] = p[OxygenDemand] * all * fed;
        double water = p[MetabolicWater] * rotted;
        d[FAST] = -fast * share;
        d[SLOW] = -slow * share;
        d[LIGNIN] = -lignin * share;
        d[MINERAL] = aired * (fed * excess + recycled - taken);
        d[MICROBE] = aired * (fed * (freed - excess) + taken - recycled);
        d[WATER] = water;
        d[HEAT] = heat_per_matter * rotted - (p[SolidHeat] * rotted - WATER_HEAT * water) * t;
        double kill = p[HeatKill] * exp2((s->celsius[z] - 70) * (0.25 * LOG2E));
        d[ACTIVITY] = (p[ActivityGrowth] * pull * aired + p[ActivitySeed] * warmth) * (1 - q[ACTIVITY])
            - kill * q[ACTIVITY];
        double used = 1 - q[FAST] / f[FAST_AT_START];
        double ph = p[AcidityStart] + p[AcidityRise] * aired * (1 - exp2(-used * pace));
        double inverse_kelvin = 1 / (s->celsius[z] + 273.15);
        double bound = 1 + exp2((inverse_kelvin * 2729.92 + 0.09018 - ph) * LOG2_10);
        double partition = 0.2138 * inverse_kelvin * exp2((6.123 - 1825 * inverse_kelvin) * LOG2_10);
        s->ammonia[z] = partition * q[MINERAL] * 1000 / (bound * p[AmmoniaHeld] * (q[WATER] + 1e-9));
    }
}

static void pass(const struct heap *h, int a, int b, double flow, double reach, const double *y,
    struct zones *s, double *rate)
{
    flow *= DAY;
    double there = most(flow, 0), back = most(-flow, 0);
    double gas = (s->diffusivity[a] + s->diffusivity[b]) * 0.5 * DAY * reach;
    double mixing = gas * AIR_MASS;
    s->ways[b] += there + mixing;
    s->in[b] += (there + mixing) * y[a * PER_ZONE + OXYGEN];
    s->ways[a] += back + mixing;
    s->in[a] += (back + mixing) * y[b * PER_ZONE + OXYGEN];
    double ta = s->celsius[a], tb = s->celsius[b];
    double wa = there * s->humidity[a], wb = back * s->humidity[b];
    double spread = gas * VAPOUR_OVER_OXYGEN * (s->vapour_density[a] - s->vapour_density[b]);
    double latent = wa * vapour_content(ta) - wb * vapour_content(tb)
        + spread * vapour_content((ta + tb) * 0.5);
    double sensible = (there * ta - back * tb) * DRY_HEAT;
    double conducted = (s->conductivity[a] + s->conductivity[b]) * (0.5 * DAY) * reach * (ta - tb);
    double density = (s->dry[a] * s->inverse_volume[a] + s->dry[b] * s->inverse_volume[b]) * 0.5;
    double seep = h->p[CapillaryDiffusivity] * density * reach * (s->ratio[a] - s->ratio[b]);
    seep = least(s->warmth[a], s->warmth[b]) > 0 ? seep : 0;
    double heat = latent + sensible + conducted + WATER_HEAT * seep * (seep > 0 ? ta : tb);
    double water = wa - wb + spread + seep;
    double nitrogen = (there * s->ammonia[a] - back * s->ammonia[b]) * (1 / AIR_MASS)
        + gas * (s->ammonia[a] - s->ammonia[b]);
    double *da = rate + a * PER_ZONE, *db = rate + b * PER_ZONE;
    da[HEAT] -= heat;
    db[HEAT] += heat;
    da[WATER] -= water;
    db[WATER] += water;
    da[MINERAL] -= nitrogen;
    db[MINERAL] += nitrogen;
}

static void leave(int z, double flow, double spread, double gas_way, double conducted,
    const struct outside *now, struct zones *s, double *rate)
{
    flow *= DAY;
    double leaving = most(flow, 0), entering = most(-flow, 0), t = s->celsius[z];
    double out = leaving * s->humidity[z], in = entering * now->humidity;
    double latent = (out + most(spread, 0)) * vapour_content(t)
        - (in + most(-spread, 0)) * vapour_content(now->air);
    double sensible = (leaving * t - entering * now->air) * DRY_HEAT;
    double ways = entering + gas_way * AIR_MASS;
    double *d = rate + z * PER_ZONE;
    d[HEAT] -= latent + sensible + conducted;
    d[WATER] -= out - in + spread;
    d[MINERAL] -= (leaving * (1 / AIR_MASS) + gas_way) * s->ammonia[z];
    s->ways[z] += ways;
    s->in[z] += ways * 0.2095;
}

static void surface(const struct heap *h, int z, double flow, double area, double half,
    const struct barrier *barrier, double sun, const struct outside *now, struct zones *s, double *rate)
{
    double inverse_transfer = 1 / (h->p[SurfaceFactor] * (5.7 + 3.8 * h->wind));
    double outside = now->air + 0.7 * sun * inverse_transfer;
    double insulated = h->p[WallFactor] * barrier->resistance + inverse_transfer;
    double conductivity = s->conductivity[z], gas = s->diffusivity[z];
    double conducted = area * DAY * conductivity * (s->celsius[z] - outside)
        / (insulated * conductivity + half);
    double still = 1200 * inverse_transfer;
    double vapour_way = gas * (VAPOUR_OVER_OXYGEN * DAY) * area
        / (still / barrier->evaporation * gas * VAPOUR_OVER_OXYGEN + half);
    double openness = least(h->p[EntryFactor] * barrier->openness, 1);
    double gas_way = gas * DAY * area / (still / openness * gas + half);
    leave(z, flow, vapour_way * (s->vapour_density[z] - now->vapour_density), gas_way, conducted, now,
        s, rate);
}

static void exchange(const struct heap *h, const struct outside *now, const double *y,
    struct zones *s, double *rate)
{
    int rings = h->rings, top = (h->layers - 1) * rings;
    for (int k = 0, z = 0; k < h->layers; k++) {
        for (int r = 0; r < rings; r++, z++) {
            if (k < h->layers - 1)
                pass(h, z, z + rings, s->up[z],
                    h->plan[r] / most(0.5 * (s->thickness[z] + s->thickness[z + rings]), h->least_distance),
                    y, s, rate);
            if (r < rings - 1)
                pass(h, z, z + 1, s->out[z],
                    h->perimeter[r] * 0.5 / (h->inward[r] + h->outward[r])
                        * (s->thickness[z] + s->thickness[z + 1]), y, s, rate);
        }
    }
    for (int z = 0; z < h->zones; z++) {
        double over = s->ratio[z] - h->p[HoldingCapacity];
        if (over > 0 && s->warmth[z] > 0) {
            const double *q = y + z * PER_ZONE;
            double flow = over * s->dry[z] / h->p[DrainTime];
            double heat = flow * WATER_HEAT * s->celsius[z], nitrogen = flow * q[MINERAL] / q[WATER];
            double *d = rate + z * PER_ZONE;
            d[WATER] -= flow;
            d[HEAT] -= heat;
            d[MINERAL] -= nitrogen;
            if (z >= rings) {
                d -= rings * PER_ZONE;
                d[WATER] += flow;
                d[HEAT] += heat;
                d[MINERAL] += nitrogen;
            }
        }
    }
    for (int r = 0; r < rings; r++) {
        surface(h, top + r, s->top[r], h->top[r], s->thickness[top + r] * 0.5, &h->cover, h->sun, now,
            s, rate);
        double half = s->thickness[r] * 0.5, conductivity = s->conductivity[r];
        double conducted = h->plan[r] * DAY * conductivity * (s->celsius[r] - h->ground)
            / (h->p[GroundResistance] * conductivity + half);
        leave(r, -s->base[r], 0, 0, conducted, now, s, rate);
        double rain = h->rain * (1 - h->cover.shed) * h->plan[r];
        rate[(top + r) * PER_ZONE + WATER] += rain;
        rate[(top + r) * PER_ZONE + HEAT] += rain * WATER_HEAT * most(now->air, 0);
    }
    if (h->has_sides)
        for (int k = 0; k < h->layers; k++) {
            int z = k * rings + rings - 1;
            surface(h, z, s->side[k], h->perimeter[rings - 1] * s->thickness[z], h->inward[rings - 1],
                &h->wall, 0, now, s, rate);
        }
}

void heap_rates(struct heap *h, double time, const double *y, double *rate)
{
    struct zones s;
    double air = h->air + h->swing * cos(2 * M_PI * (h->start_hour + 24 * time - 15) / 24);
    double kelvin = air + 273.15;
    double vapour = h->humidity * 610.94 * exp(17.625 * air / (air + 243.04));
    struct outside now = { air,
        PRESSURE / (DRY_GAS * kelvin) * (1 - 0.378 * vapour / PRESSURE),
        vapour / (VAPOUR_GAS * kelvin), 0.622 * vapour / (PRESSURE - vapour) };
    h->evaluations++;
    memset(s.in, 0, sizeof(double) * (size_t)h->zones);
    memset(s.ways, 0, sizeof(double) * (size_t)h->zones);
    warm(h, y, &s);
    press(h, time, y, &s);
    moisten(h, &s);
    blow(h, &now, &s);
    rot(h, y, &s, rate);
    exchange(h, &now, y, &s, rate);
    for (int z = 0; z < h->zones; z++) {
        double half = h->p[OxygenHalf], ways = s.ways[z], supply = s.in[z];
        double b = ways * half + s.use[z] * (28.97 / 32) - supply;
        double root = sqrt(b * b + 4 * ways * half * supply);
        double balance = b > 0 ? 2 * half * supply / (root + b) : (root - b) / (2 * ways);
        rate[z * PER_ZONE + OXYGEN] = (balance - y[z * PER_ZONE + OXYGEN]) / h->p[OxygenTime];
    }
}

double heap_core(const struct heap *h, const double *y)
{
    struct zones s;
    double core = 0;
    warm(h, y, &s);
    for (int z = 0; z < h->zones; z++)
        core += h->core[z] * s.celsius[z];
    return core;
}

double heap_capacity(const struct heap *h, const double *y, int zone)
{
    const double *q = y + zone * PER_ZONE;
    return (q[FAST] + q[SLOW] + q[LIGNIN] + h->fixed[zone * FIXED_PER_ZONE + ASH]) * h->p[SolidHeat]
        + q[WATER] * WATER_HEAT;
}

static int take(FILE *f, double *to, int count)
{
    return fread(to, sizeof(double), (size_t)count, f) == (size_t)count;
}

int heap_read(const char *path, struct heap_file *file)
{
    double head[9], weather[8], barriers[8];
    struct heap common = { 0 };
    FILE *f = fopen(path, "rb");
    if (!f || !take(f, head, 9) || head[0] != 20261125 || !take(f, weather, 8) || !take(f, barriers, 8))
        return 0;
    common.rings = (int)head[1];
    common.layers = (int)head[2];
    common.zones = common.rings * common.layers;
    common.has_sides = (int)head[3];
    if (common.rings > MOST_RINGS || common.zones > MOST_ZONES || (int)head[5] != PARAMETERS)
        return 0;
    file->members = (int)head[4];
    file->checks = (int)head[6];
    file->days = head[7];
    file->look_every = head[8];
    file->zones = common.zones;
    common.air = weather[0];
    common.wind = weather[1];
    common.rain = weather[2];
    common.humidity = weather[3];
    common.sun = weather[4];
    common.swing = weather[5];
    common.start_hour = weather[6];
    common.ground = weather[7];
    memcpy(&common.wall, barriers, sizeof common.wall);
    memcpy(&common.cover, barriers + 4, sizeof common.cover);
    int n = common.zones * PER_ZONE, each = 1 + 2 * n;
    file->heap = calloc((size_t)file->members, sizeof(struct heap));
    file->start = calloc((size_t)(file->members * n), sizeof(double));
    file->check = calloc((size_t)(file->members * file->checks * each), sizeof(double));
    if (!take(f, common.plan, common.rings) || !take(f, common.top, common.rings)
        || !take(f, common.perimeter, common.rings) || !take(f, common.inward, common.rings)
        || !take(f, common.outward, common.rings) || !take(f, common.core, common.zones)
        || !take(f, &common.least_distance, 1))
        return 0;
    for (int m = 0; m < file->members; m++) {
        struct heap *h = file->heap + m;
        *h = common;
        if (!take(f, h->p, PARAMETERS) || !take(f, h->carbon, 3)
            || !take(f, h->fixed, h->zones * FIXED_PER_ZONE) || !take(f, file->start + m * n, n)
            || !take(f, file->check + m * file->checks * each, file->checks * each))
            return 0;
    }
    fclose(f);
    return 1;
}

struct heap_file *heap_open(const char *path)
{
    struct heap_file *file = calloc(1, sizeof *file);
    return heap_read(path, file) ? file : NULL;
}

int heap_members(const struct heap_file *file) { return file->members; }
int heap_states(const struct heap_file *file) { return file->zones * PER_ZONE; }
double heap_days(const struct heap_file *file) { return file->days; }
double heap_look_every(const struct heap_file *file) { return file->look_every; }
struct heap *heap_member(struct heap_file *file, int member) { return file->heap + member; }
const double *heap_start(const struct heap_file *file, int member)
{
    return file->start + (size_t)member * (size_t)(file->zones * PER_ZONE);
}
long heap_evaluations(const struct heap *h) { return h->evaluations; }

#!/usr/bin/env python3
"""What the simulation expects of the core of a good heap, by volume, air and age: writes data/signs/expected-heat.csv.

A good heap: grass, dead leaves, wood chips and stable muck mixed to a C:N near 28 and about 58 % water, built at one go,
slatted walls, a breathable cover, never turned. 100 members, seed 1. Only the standard library is used.
"""

import csv
import json
import math
import pathlib
import subprocess

ROOT = pathlib.Path(__file__).resolve().parents[2]
VOLUMES = [0.1, 0.3, 0.6, 1.0, 2.0, 5.0]  # m3
AIRS = [-5, 5, 15, 25]  # degrees Celsius
DAYS = [1, 2, 3, 5, 7, 10, 14, 21, 30]


def question(volume, air):
    side = volume ** (1 / 3)
    part = lambda material, share: {
        "material": material,
        "amount": {"value": share * volume * 1.15, "unit": "m3"},
    }
    return {
        "bin": {"shape": "box", "length_m": side, "width_m": side, "height_m": side},
        "ingredients": [
            part("grass_clippings_fresh", 0.3),
            part("leaves_mixed_dry", 0.5),
            part("wood_chips_coarse", 0.1),
            part("horse_manure_straw", 0.25),
        ],
        "water_l": 25 * volume,
        "start_c": max(air, 2),
        "weather": {"air_c": air, "swing_c": 4, "wind_m_s": 1},
        "walls": "slatted",
        "cover": "breathable",
        "days": DAYS[-1],
        "members": 100,
        "seed": 1,
    }


def answer(volume, air):
    out = subprocess.run(
        [str(ROOT / "heapwright"), "simulate", "--input", "-", "--json"],
        input=json.dumps(question(volume, air)),
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    return json.loads(out)


def main():
    rows = []
    for volume in VOLUMES:
        for air in AIRS:
            told = answer(volume, air)
            for day in DAYS:
                at = min(range(len(told["day"])), key=lambda i: abs(told["day"][i] - day))
                core = told["core_c"][at]
                rows.append([volume, air, day, *(round(core[k], 1) for k in ("p05", "p50", "p95"))])
                print(rows[-1], flush=True)
    with open(ROOT / "data/signs/expected-heat.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow("volume_m3,air_c,day,low_c,typical_c,high_c,source,kind".split(","))
        out.writerows([*row, "own_derivation", "derived"] for row in rows)


if __name__ == "__main__":
    main()

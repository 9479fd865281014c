#!/usr/bin/env python3
"""Our heap simulation against CVODE, ARKODE and SciPy: the same members, the same accuracy, in turns, on one core.

  bench/heap/run [MEMBERS [REFINEMENT [ROUNDS]]]     32 members, grid as usual (1), five rounds unless told

Processor time, so that other work on the machine counts little. Each peer takes the loosest tolerance and the faster
weights at which its error is no greater than ours; errors are those of the temperature of the core, every three hours
for 60 days, against CVODE with a tight tolerance. What is printed is all that was measured.
"""

import os
import statistics
import subprocess
import sys
import tempfile

import numpy as np
import scipy

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))
PROGRAM = os.path.join(
    ROOT, "bench/Heapwright.Benchmarks/bin/Release/net10.0/linux-x64/Heapwright.Benchmarks.dll"
)
OUT = os.path.join(ROOT, "artifacts/bench-heap")
TOLERANCES = [0.1, 0.03, 0.01, 0.003, 0.001, 0.0003]
USUAL_TOLERANCE = "0.03"
CORE = sorted(os.sched_getaffinity(0))[-1]


def run(command):
    try:
        result = subprocess.run(
            ["taskset", "-c", str(CORE), *command], capture_output=True, text=True, timeout=300
        )
    except subprocess.TimeoutExpired:
        return None
    return result.stdout.strip() if result.returncode == 0 else None


def peer(kind, weights, tolerance, file, members, output):
    if kind == "lsoda":
        command = ["/usr/bin/python3", f"{HERE}/lsoda.py", f"{OUT}/libheap.so"]
    else:
        command = [f"{OUT}/peers", kind]
    said = run([*command, weights, f"{tolerance:g}", file, str(members), output])
    return said and (said.split(), np.fromfile(output).reshape(members, -1))


def ours(members, refinement, output):
    said = run(
        ["dotnet", PROGRAM, "heap-time", output, str(members), str(refinement), USUAL_TOLERANCE]
    )
    return said.split(), np.fromfile(output).reshape(members, -1)


def errors(core, reference):
    """Of each member: the greatest difference, and by how many days the first 55 degrees is shifted."""
    worst = np.abs(core - reference).max(axis=1)
    days = np.arange(core.shape[1]) / 8

    def first(row):
        above = np.nonzero(row >= 55)[0]
        if len(above) == 0 or above[0] == 0:
            return np.nan
        i = above[0]
        return np.interp(55, row[i - 1 : i + 1], days[i - 1 : i + 1])

    shift = np.array([abs(first(a) - first(b)) for a, b in zip(core, reference)])
    return worst, shift


def describe(core, reference):
    worst, shift = errors(core, reference)
    rest = shift[(worst > 0.1) & np.isfinite(shift)]
    return (
        f"greatest error of a member: median {np.median(worst):.4f}, 90th percentile {np.quantile(worst, 0.9):.4f}, "
        f"worst {worst.max():.3f} C; within 0.1 C: {100 * (worst <= 0.1).mean():.0f} %; "
        + (f"55 C shifted in the rest by at most {rest.max() * 24:.2f} h" if len(rest) else "no 55 C in the rest")
    )


def main(members=32, refinement=1, rounds=5):
    members, refinement, rounds = int(members), int(refinement), int(rounds)
    with tempfile.TemporaryDirectory() as folder:
        file, output = f"{folder}/members.bin", f"{folder}/core.bin"
        run(["dotnet", PROGRAM, "heap-export", file, str(members), str(refinement)])
        print(run([f"{OUT}/peers", "version"]), "; SciPy", scipy.__version__, "; NumPy", np.__version__)
        print(subprocess.run(["cc", "--version"], capture_output=True, text=True).stdout.split("\n")[0])
        print(".NET", subprocess.run(["dotnet", "--version"], capture_output=True, text=True).stdout.strip())
        print("load", open("/proc/loadavg").read().strip(), "on", os.cpu_count(), "cores")
        checked = run([f"{OUT}/peers", "check", file])
        if checked is None:
            raise SystemExit("the rates in C differ from ours: see bench/heap/heap.c")
        print(checked)
        tight = "gmres" if refinement > 1 else "dense"
        reference = peer(tight, "all", 2e-5, file, members, output)[1]
        second = peer("erk", "all", 1e-5, file, members, output)[1]
        print(f"two tight runs differ by at most {np.abs(reference - second).max():.5f} C")
        said, core = ours(members, refinement, output)
        limit = np.median(errors(core, reference)[0])
        share = (errors(core, reference)[0] <= 0.1).mean()
        print("ours:", describe(core, reference))

        kinds = ["dense", "band", "gmres", "adams", "erk", "lsoda"]
        if refinement > 1:
            kinds = ["gmres", "band", "erk", "lsoda"]
        chosen = {}
        for kind in kinds:
            # An approximate Jacobian does not converge where only temperature and oxygen are weighted.
            for weights in ("all",) if kind == "band" else ("ours", "all"):
                for tolerance in TOLERANCES:
                    answer = peer(kind, weights, tolerance, file, members, output)
                    if answer is None:
                        continue
                    worst = errors(answer[1], reference)[0]
                    if np.median(worst) <= limit and (worst <= 0.1).mean() >= share:
                        seconds = float(answer[0][3])
                        if kind not in chosen or seconds < chosen[kind][2]:
                            chosen[kind] = (weights, tolerance, seconds)
                        break
        times = {kind: [] for kind in ["ours", *chosen]}
        cores, lines = {"ours": core}, {}
        for _ in range(rounds):
            for kind in times:
                if kind == "ours":
                    said, cores[kind] = ours(members, refinement, output)
                else:
                    said, cores[kind] = peer(kind, *chosen[kind][:2], file, members, output)
                times[kind].append(float(said[3]) / members)
                lines[kind] = said
        base = statistics.median(times["ours"])
        print(f"{'solver':8} {'weights':8} {'tol.':>6} {'ms/member':>10} {'min':>7} {'max':>7} {'ratio':>6} {'steps':>6} {'evals':>6}")
        for kind, spent in times.items():
            weights, tolerance = chosen[kind][:2] if kind in chosen else ("ours", float(USUAL_TOLERANCE))
            median = statistics.median(spent)
            print(
                f"{kind:8} {weights:8} {tolerance:6g} {median * 1e3:10.3f} {min(spent) * 1e3:7.3f}"
                f" {max(spent) * 1e3:7.3f} {median / base:6.2f} {lines[kind][4]:>6} {lines[kind][5]:>6}"
            )
        for kind in times:
            print(f"{kind}: {describe(cores[kind], reference)}")
            if kind == "lsoda":
                print("lsoda: a call of the rates through ctypes takes", " ".join(lines[kind][7:]))
        print("load", open("/proc/loadavg").read().strip())


main(*sys.argv[1:])

"""Integrates the members of a file with SciPy's odeint (LSODA); the rates are the same compiled C, called by ctypes.

python3 lsoda.py LIBRARY WEIGHTS TOLERANCE FILE MEMBERS OUTPUT; prints what peers.c prints, and the share of the
processor time that went into the compiled rates rather than into Python's calls and the solver.
"""

import ctypes
import sys
import time

import numpy as np
from scipy.integrate import odeint

PER_ZONE, HEAT, OXYGEN = 9, 0, 8


def open_library(path):
    library = ctypes.CDLL(path)
    library.heap_open.restype = ctypes.c_void_p
    library.heap_open.argtypes = [ctypes.c_char_p]
    for name, result in (
        ("heap_states", ctypes.c_int),
        ("heap_days", ctypes.c_double),
        ("heap_look_every", ctypes.c_double),
    ):
        getattr(library, name).restype = result
        getattr(library, name).argtypes = [ctypes.c_void_p]
    library.heap_member.restype = ctypes.c_void_p
    library.heap_member.argtypes = [ctypes.c_void_p, ctypes.c_int]
    library.heap_start.restype = ctypes.POINTER(ctypes.c_double)
    library.heap_start.argtypes = [ctypes.c_void_p, ctypes.c_int]
    library.heap_rates.restype = None
    library.heap_rates.argtypes = [ctypes.c_void_p, ctypes.c_double, ctypes.c_void_p, ctypes.c_void_p]
    library.heap_core.restype = ctypes.c_double
    library.heap_core.argtypes = [ctypes.c_void_p, ctypes.c_void_p]
    library.heap_capacity.restype = ctypes.c_double
    library.heap_capacity.argtypes = [ctypes.c_void_p, ctypes.c_void_p, ctypes.c_int]
    library.heap_evaluations.restype = ctypes.c_long
    library.heap_evaluations.argtypes = [ctypes.c_void_p]
    return library


def main(library_path, weights, tolerance, path, members, output):
    library = open_library(library_path)
    file = library.heap_open(path.encode())
    tolerance, members = float(tolerance), int(members)
    n = library.heap_states(file)
    zones = n // PER_ZONE
    looks = np.arange(round(library.heap_days(file) / library.heap_look_every(file)) + 1)
    days = looks * library.heap_look_every(file)
    core = np.empty((members, len(days)))
    steps = evaluations = 0
    rates, address = library.heap_rates, ctypes.addressof
    spent = 0.0
    for member in range(members):
        heap = library.heap_member(file, member)
        start = np.array(library.heap_start(file, member)[:n])
        rate = np.empty(n)
        into = rate.ctypes.data
        scale = np.abs(start)
        loose = weights == "ours"
        relative = np.full(n, 1.0 if loose else tolerance / 60)
        absolute = (1e9 if loose else tolerance / 60 * 1e-3) * scale + 1e-12
        for zone in range(zones):
            # The heat capacity at the start: odeint takes no weights that change.
            capacity = library.heap_capacity(heap, start.ctypes.data, zone)
            relative[zone * PER_ZONE + HEAT] = relative[zone * PER_ZONE + OXYGEN] = 0
            mean = 1.0  # LSODA takes the largest weighted error, or its root mean square where stiff
            absolute[zone * PER_ZONE + HEAT] = tolerance * capacity * mean
            absolute[zone * PER_ZONE + OXYGEN] = tolerance * (0.004 / 0.03)

        def function(t, y):
            rates(heap, t, y.ctypes.data, into)
            return rate

        before = time.process_time()
        y, info = odeint(
            function,
            start,
            days,
            rtol=relative,
            atol=absolute,
            tfirst=True,
            full_output=True,
            mxstep=1_000_000,
            hmax=0.25,
        )
        spent += time.process_time() - before
        if info["message"] != "Integration successful.":
            raise SystemExit(info["message"])
        steps += int(info["nst"][-1])
        evaluations += library.heap_evaluations(heap)
        for look in looks:
            row = np.ascontiguousarray(y[look])
            core[member, look] = library.heap_core(heap, row.ctypes.data)
    # What the compiled rates alone would have taken.
    before = time.process_time()
    for _ in range(200):
        function(1.0, start)
    called = (time.process_time() - before) / 200
    core.tofile(output)
    print(
        f"lsoda-{weights} {tolerance:g} {members} {spent:.6f} {steps // members} {evaluations // members}"
        f" call {called * 1e6:.1f} us"
    )


main(*sys.argv[1:])

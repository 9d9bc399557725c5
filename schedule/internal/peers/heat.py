"""The heat model stated a second time, by the method of lines, and solved by SciPy.

Reads cooks from standard input and writes, for each, the converged minutes and the
cheapest of SciPy's stiff methods that is at least as exact as the Go program was:

    [{"name", "body": {...}, "stages": [{"cooker", "level_c", "wrap", "until_c"}], "minutes"}]
    [{"name", "reference", "minutes", "seconds", "method", "cells", "rtol"}]

Seconds are CPU time of this process, the median of several runs. All units are SI,
temperatures degC. Equations and constants are those of the second edition of the model,
written from its text; the body comes from the catalogue, what a grate, an oven and a
wrapping do to it is said here anew.
"""

import json
import math
import statistics
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

SIGMA, KELVIN, SEA_LEVEL = 5.670374e-8, 273.15, 101325

# Water: the middle and width of its release, kg of it per kg of meat that is 70 % water,
# the delay of its seeping, and on the surface what is there at first and where it is half wet.
T_MID, T_WID = 64.5, 6.8
SUPPLY, LEAN, TAU = 0.322, 0.70, 1.6 * 3600
B_FIRST, B_HALF, W_DRY, DRIP = 0.5, 0.335, 0.0118, 0.25 / 3600

# Choi and Okos 1986, water, protein, fat, ash: conductivity, specific heat, density;
# a + b T + c T^2 each.
COMPONENTS = [
    [(0.57109, 1.7625e-3, -6.7036e-6), (4176.2, -0.090864, 5.4731e-3), (997.18, 3.1439e-3, -3.7574e-3)],
    [(0.17881, 1.1958e-3, -2.7178e-6), (2008.2, 1.2089, -1.3129e-3), (1329.9, -0.5184, 0)],
    [(0.18071, -2.7604e-4, -1.7749e-7), (1984.2, 1.4733, -4.8008e-3), (925.59, -0.41757, 0)],
    [(0.32962, 1.4011e-3, -2.9069e-6), (1092.6, 1.8896, -3.6817e-3), (2423.8, -0.28063, 0)],
]
K_FACTOR = 0.93
H_BOIL = 400

# Cover lets a share of the evaporation through; under it lies a resistance, m2 K/W.
WRAPS = {
    "": {},
    "foil": {"eps": 0.25, "cover": 0.0, "resistance": 0.085},
    "paper": {"cover": 0.35, "resistance": 0.01},
}


def surroundings(stage):
    """What the meat feels on a calm day of 18 degC at sea level."""
    level, day = stage["level_c"], 18
    s = {"air": level, "wall": level, "h": 8.5, "eps": 0.85, "vapour": 4000, "cover": 1.0, "resistance": 0.0}
    if stage["cooker"] == "grate":
        s["h"] = 7.8 * ((level - day) / 100) ** 0.6
        s["wall"] = level - 0.05 * (level - day)
    elif stage["cooker"] != "oven":
        raise ValueError(f"cooker is {stage['cooker']!r}, want 'grate' or 'oven'")
    return s | WRAPS[stage["wrap"]]


def released(t):
    """The share of the water that leaves the meat in the end at a temperature."""
    return 1 / (1 + np.exp(np.minimum((T_MID - t) / T_WID, 500)))


def saturation(t):
    """Pressure of saturated vapour and its slope."""
    below = 233.426 + t
    p = 133.322 * 10 ** (8.07131 - 1730.63 / below)
    return p, p * math.log(10) * 1730.63 / below**2


def dimensionality(small, middle, large, s):
    """E. The factor on a bird's radius makes it larger and leaves the Biot number alone."""
    mean = (s["air"] + 70) / 2 + KELVIN
    biot = (s["h"] + 4 * s["eps"] * SIGMA * mean**3) * small / 2 / 0.45
    ratios = (middle / small, large / small)
    return 1 + sum((1 + 2 / biot) / (b * b + 2 * b / biot) for b in ratios)


class Meat:
    """A body in cells, in the shape that its first surroundings give it."""

    def __init__(self, body, first, cells):
        self.n = cells
        sides = sorted(body[side] for side in ("ThicknessM", "WidthM", "LengthM"))
        radius = sides[0] / 2 * body["RadiusScale"]
        e = dimensionality(*sides, first)
        faces = np.linspace(0, 1, cells + 1)
        self.area = faces[1:-1] ** (e - 1)  # as a share of the surface
        self.volume = np.diff(faces**e) * radius / e  # over the surface, m
        self.cell = radius / cells

        mass = np.array([body[part] for part in ("Water", "Protein", "Fat", "Ash")])
        mass = mass / mass.sum()
        k, c, density = (np.array(columns) for columns in zip(*COMPONENTS))
        each = mass / (density @ [1, 40, 40**2])  # m3 of each in a kg
        rho = 1 / each.sum()
        self.k = K_FACTOR * (each * rho) @ k
        self.c = rho * mass @ c
        self.supply = SUPPLY * body["SupplyFactor"] * body["Water"] / LEAN * rho * self.volume
        self.wetcut = body["WetFactor"]
        self.start = body["StartC"]
        self.surface = self.start  # the last one found: where the next search begins

    def first(self):
        """Temperature and released share of each cell in turn, then the water."""
        y = np.empty(2 * self.n + 1)
        y[0:-1:2], y[1::2], y[-1] = self.start, released(self.start), B_FIRST
        return y

    def enter(self, s):
        self.air, self.wall, self.h = s["air"], s["wall"], s["h"]
        self.grey, self.vapour = s["eps"] * SIGMA, s["vapour"]
        self.cover, self.resistance = s["cover"], s["resistance"]
        self.transfer = 0.622 * self.h / (1010 * SEA_LEVEL * 0.9)
        self.boil = 1730.63 / (8.07131 - math.log10(SEA_LEVEL / 133.322)) - 233.426

    def flux(self, ts, w):
        """Heat into the surface, its slope, and the demand for vapour in kg/(m2 s)."""
        hot, own = self.wall + KELVIN, ts + KELVIN
        total, squares = hot + own, hot * hot + own * own
        hr, hr_slope = self.grey * squares * total, self.grey * (2 * own * total + squares)
        bare = self.h * (self.air - ts) + hr * (self.wall - ts)
        bare_slope = hr_slope * (self.wall - ts) - self.h - hr
        g = 1 / (1 + (self.h + hr) * self.resistance)
        q, slope = g * bare, g * bare_slope - g * g * self.resistance * hr_slope * bare
        demand = 0.0
        if self.cover > 0:
            p, p_slope = saturation(ts)
            demand = self.transfer * (p - self.vapour)
            if demand < 0:
                w = self.cover  # dew settles on dry skin too
            latent = 2.501e6 - 2361 * ts
            q -= w * latent * demand
            slope -= w * (latent * self.transfer * p_slope - 2361 * demand)
        if ts > self.boil:
            q -= H_BOIL * (ts - self.boil)
            slope -= H_BOIL
        return q, slope, demand

    def settle(self, outer, gain, w):
        """The surface temperature at which the flux is what the outermost cell takes."""
        ts, low, high = self.surface, -100.0, 700.0
        for _ in range(60):
            q, slope, demand = self.flux(ts, w)
            excess = gain * (outer - ts) + q  # falls as the surface gets hotter
            if excess > 0:
                low = ts
            else:
                high = ts
            move = excess / (gain - slope)
            if not low < ts + move < high:  # the flux bends at the dew point and at boiling
                move = (low + high) / 2 - ts if abs(move) > 1e-6 else 0.0
            ts += move
            if abs(move) < 1e-6:
                break
        self.surface = ts
        return ts, demand

    def rhs(self, _, y):
        t, x, water = y[0:-1:2], y[1::2], max(y[-1], 0.0)
        k = self.k[0] + t * (self.k[1] + t * self.k[2])
        between = 2 * k[:-1] * k[1:] / (k[:-1] + k[1:]) * self.area / self.cell * (t[1:] - t[:-1])
        gain = 2 * k[-1] / self.cell
        exposed = self.cover * self.wetcut
        fed = exposed * water / (water + B_HALF)
        ts, demand = self.settle(t[-1], gain, fed + exposed * W_DRY)
        heat = np.zeros(self.n)
        heat[:-1] += between
        heat[1:] -= between
        heat[-1] += gain * (ts - t[-1])
        leaving = np.maximum(released(t) - x, 0) / TAU
        out = np.empty_like(y)
        out[0:-1:2] = heat / (self.volume * (self.c[0] + t * (self.c[1] + t * self.c[2])))
        out[1::2] = leaving
        out[-1] = self.supply @ leaving - fed * demand - DRIP * water
        return out


BAND = 2  # an equation looks at its cell, the cells beside it and, at the surface, the water


def jacobian(meat):
    """Columns a few at a time by differences, and the water's sum over the cells."""
    n = 2 * meat.n + 1
    far = np.abs(np.subtract.outer(np.arange(n), np.arange(n))) > BAND

    def matrix(t, y):
        base = meat.rhs(t, y)
        step = 1e-6 * np.maximum(np.abs(y), 1e-2)
        out = np.empty((n, n))
        for g in range(2 * BAND + 1):
            moved = y.copy()
            moved[g :: 2 * BAND + 1] += step[g :: 2 * BAND + 1]
            change = meat.rhs(t, moved) - base
            out[:, g :: 2 * BAND + 1] = np.divide.outer(change, step[g :: 2 * BAND + 1])
        out[far] = 0
        share, leaving = released(y[0:-1:2]), base[1::2] > 0
        out[-1, 0 : -1 - BAND : 2] = (meat.supply * share * (1 - share) / T_WID / TAU * leaving)[:-1]
        out[-1, 1 : -1 - BAND : 2] = (-meat.supply / TAU * leaving)[:-1]
        return out

    return matrix


def cook(case, method, cells, rtol):
    """Minutes until the last stage's core temperature."""
    stages = case["stages"]
    meat = Meat(case["body"], surroundings(stages[0]), cells)
    y, now = meat.first(), 0.0
    options = {"lband": BAND, "uband": BAND} if method == "LSODA" else {"jac": jacobian(meat)}
    atol = np.empty_like(y)
    atol[0:-1:2], atol[1::2], atol[-1] = 100 * rtol, rtol, rtol
    for stage in stages:
        meat.enter(surroundings(stage))
        reached = lambda _, y, c=stage["until_c"]: y[0] - (y[2] - y[0]) / 8 - c
        reached.terminal, reached.direction = True, 1
        run = solve_ivp(meat.rhs, (now, now + 4e5), y, method=method, events=reached, rtol=rtol, atol=atol,
                        first_step=5.0, **options)
        if run.status != 1:
            raise RuntimeError(f"{case['name']}: {method} {cells} {rtol}: {run.message}")
        now, y = run.t[-1], run.y[:, -1]
    return now / 60


def cost(work):
    """CPU seconds of a call, the median of at least five within two seconds."""
    times = []
    while len(times) < 5 or sum(times) < 2 and len(times) < 50:
        began = time.process_time()
        work()
        times.append(time.process_time() - began)
    return statistics.median(times)


def best(case):
    """The cheapest setting at least as exact as ours; the faster half is timed well."""
    reference = cook(case, "LSODA", 192, 1e-7)
    other = cook(case, "Radau", 64, 1e-5)
    if abs(other / reference - 1) > 5e-4:
        raise RuntimeError(f"{case['name']}: {reference} by one method, {other} by another")
    allowed = max(abs(case["minutes"] / reference - 1), 2e-4)
    fit = []
    for method in ("LSODA", "BDF", "Radau"):
        for cells in (8, 12, 16, 24):
            for rtol in (1e-1, 1e-2, 1e-3, 1e-4, 1e-5):
                began = time.process_time()
                try:
                    minutes = cook(case, method, cells, rtol)
                except RuntimeError:
                    continue  # too coarse a tolerance for the method
                if abs(minutes / reference - 1) <= allowed:
                    fit.append((time.process_time() - began, method, cells, rtol, minutes))
    fit.sort()
    timed = [(cost(lambda: cook(case, m, n, r)), m, n, r, minutes) for _, m, n, r, minutes in fit[:4]]
    seconds, method, cells, rtol, minutes = min(timed)
    return {"name": case["name"], "reference": reference, "minutes": minutes, "seconds": seconds,
            "method": method, "cells": cells, "rtol": rtol}


if __name__ == "__main__":
    json.dump([best(case) for case in json.load(sys.stdin)], sys.stdout)

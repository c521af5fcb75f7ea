"""Cooks by a library's stiff solver, for the crate's march to be compared with.

    python3 tests/reference/stiff/solve.py

reads `cooks.json` (what is cooked) and `cuts.json` (the catalogue, printed by the crate: `cargo xtask generate`) beside
it and writes `tests/reference/data/stiff_solver.json`. It needs numpy and scipy; with numba it takes half a minute,
without it some ten. Method: BDF of scipy at a relative tolerance of 1e-7 on the same cells; events are found on the
solver's own interpolant. The water and the heat of each cook are added up and must close.
"""

import json
import math
import pathlib
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp

import piece
from piece import (
    AIR, BONES, BONE_CELLS, BOX_START, BOXED, CLIMATES, COLUMNS, COVER, COVERS, DRAUGHT, DRIP_LENGTH, EDGE_SHARE,
    EMISSIVITY, FILM_LIMIT, FLUX, HUMIDITY, LENGTH, PARAMETERS, PIECES, PRESSURE, RESISTANCE, ROOM, SHARE, SINCE, SPEED,
    WALLS, XA, XF, XP, XW, mesh, rhs, shape,
)

HERE = pathlib.Path(__file__).resolve().parent
HOUR = 3600.0
# The probe may lie so far below the target when the demand is met, K.
PROBE_MARGIN = 4.5


class Cook:
    """A cook under way."""

    def __init__(self, cook, cut, cells):
        self.cook, self.cut = cook, cut
        growth = cook["kg"] / cut["kg"]
        t, w, l = (x * growth**e for x, e in zip(cut["metres"], cut["exponents"]))
        bone = cut["bone_under_metres"]
        if cook.get("thickness_mm"):
            told = cook["thickness_mm"] / 1000.0 - bone
            give = math.sqrt(told / t)
            t, w, l = told, w / give, l / give
        p = np.zeros(PARAMETERS)
        parts = np.array(cut["composition"])
        p[[XW, XP, XF, XA]] = parts
        raw = 1.0 / np.sum(parts / np.array([piece.RHO_W, piece.RHO_P, piece.RHO_F, piece.RHO_A]))
        if bone > 0.0:
            n = 0.0
            layers = np.r_[np.full(BONE_CELLS, bone / BONE_CELLS), mesh(t, cells - BONE_CELLS, both=True)]
            p[BONES], p[DRIP_LENGTH], p[LENGTH] = BONE_CELLS, t, 0.9 * w
            p[FLUX] = 1.0 + EDGE_SHARE * 2.0 * t * (w + l) / (w * l)
            volume = t * w * l * cut["fill"]
            p[COLUMNS] = volume / t
        else:
            n, radius, p[FLUX], volume = shape([t, w, l], cut["fill"])
            layers = mesh(radius, cells)
            p[DRIP_LENGTH], p[LENGTH] = radius, 0.9 * sorted([t, w, l])[1]
            p[COLUMNS] = volume * (n + 1.0) / radius
        r = np.r_[0.0, np.cumsum(layers)]
        self.layers = layers
        self.area = (r / r[-1]) ** n
        self.volume = (r[1:] ** (n + 1.0) - r[:-1] ** (n + 1.0)) / ((n + 1.0) * r[-1] ** n)
        self.bones = int(p[BONES])
        middles = r[:-1] + 0.5 * layers
        self.middles = middles
        self.probe_at = 0.5 * (bone + r[-1]) if bone > 0.0 else 0.0
        self.core_end = max(int(np.searchsorted(middles, self.probe_at, side="right")), self.bones + 1)
        self.raw, self.mass = raw, raw * volume
        p[SHARE] = cut["evaporating_share"]
        p[PRESSURE] = 101325.0 * (1.0 - 2.25577e-5 * cook.get("altitude_m", 0.0)) ** 5.25588
        p[PIECES] = cook.get("pieces", 1)
        self.p, self.n = p, cells
        self.outside = cook.get("outside_c", 20.0)
        self.resting = cook.get("resting_c", 20.0)
        self.t, self.sprayed, self.heat_carried = 0.0, 0.0, 0.0
        self.y = np.zeros(4 * cells + 8)
        self.y[0 : 2 * cells : 2] = cook["start_c"]
        meat = slice(self.bones, None)
        self.y[1 : 2 * cells : 2][meat] = parts[0] / (parts[1] + parts[3])
        self.y[2 * cells + 3 : 3 * cells + 3][meat] = parts[2]
        self.cover("bare")
        self.place(cook["cooker"], cook["pit"][0][1])
        self.y[2 * cells + 1] = p[HUMIDITY]
        self.hourly, self.marks = [], []
        self.water_start = self.water()
        self.heat_start = self.heat()

    def cover(self, cover):
        self.p[[EMISSIVITY, RESISTANCE, FILM_LIMIT]] = COVERS[cover]
        self.p[COVER] = {"bare": 0.0, "paper": 1.0, "foil": 2.0}[cover]
        self.p[SINCE] = self.t
        self.covered = cover

    def place(self, name, air):
        speed, humidity, draught, walls = CLIMATES[name]
        self.p[[SPEED, HUMIDITY, DRAUGHT, ROOM]] = speed, humidity, draught, self.resting
        self.p[BOXED] = 1.0 if name == "rest-box" else 0.0
        self.walls = walls
        if name == "rest-box":
            self.y[2 * self.n + 2] = air
        self.air(air)

    def air(self, celsius):
        room = self.outside if self.walls != 1.0 else celsius
        self.p[AIR], self.p[WALLS] = celsius, room + self.walls * (celsius - room)

    def probe(self, y):
        return float(np.interp(self.probe_at, self.middles, y[0 : 2 * self.n : 2]))

    def core(self, y):
        return float(np.min(y[0 : 2 * self.n : 2][self.bones : self.core_end]))

    def tenderness(self, y):
        x = y[3 * self.n + 3 : 4 * self.n + 3][self.bones :]
        v = self.volume[self.bones :]
        return float(x @ v / v.sum()) / (self.cut["demand"] or 1.0)

    def water(self):
        """Water in cells and film of a column."""
        lean = self.raw * (self.p[XP] + self.p[XA])
        return float(lean * (self.y[1 : 2 * self.n : 2] @ self.volume) + self.y[2 * self.n])

    def heat(self):
        """Heat above 0 °C of a column, by the integrals of the heat capacities."""
        total = 0.0
        for i, v in enumerate(self.volume):
            T, W, F = self.y[2 * i], self.y[2 * i + 1], self.y[2 * self.n + 3 + i]
            if i < self.bones:
                total += v * piece.BONE_CAPACITY * T
                continue
            total += v * self.raw * (
                W * (self.p[XP] + self.p[XA]) * held_water(T)
                + self.p[XP] * (2008.2 * T + 1.2089 * T**2 / 2 - 1.3129e-3 * T**3 / 3)
                + F * held_fat(T)
                + self.p[XA] * 1000.0 * T
            )
        return total

    def carried(self, before, after):
        """Heat that liquid, vapour and fat took along between two states, at the mean of both ends."""
        total, n = 0.0, self.n
        for i in range(self.bones, n):
            T, S = before[2 * i], after[2 * i]
            gone = before[2 * i + 1] - after[2 * i + 1]
            fat = before[2 * n + 3 + i] - after[2 * n + 3 + i]
            total += 0.5 * self.volume[i] * self.raw * (
                (self.p[XP] + self.p[XA]) * gone * (held_water(T) + held_water(S))
                + fat * (held_fat(T) + held_fat(S))
            )
        return total

    def go(self, until, events):
        """Marches to a time (s) or to the first of the events (functions of y that rise through zero); says which."""
        def watch(f):
            g = lambda t, y, *_: f(y)
            g.terminal, g.direction = True, 1.0
            return g

        here = [k for k, f in enumerate(events) if f(self.y) >= 0.0]
        if here:
            return here[0]
        if until - self.t < 1e-6:
            return None
        size = len(self.y)
        atol = np.full(size, 1e-8)
        found = solve_ivp(
            rhs, (self.t, until), self.y, method="BDF", rtol=1e-7, atol=atol, first_step=0.1,
            args=(self.p, self.layers, self.area, self.volume), events=[watch(f) for f in events], dense_output=True,
        )
        if found.status < 0:
            raise RuntimeError(f"{self.cook['name']}: {found.message}")
        states = found.y.T
        for a, b in zip(states[:-1], states[1:]):
            self.heat_carried += self.carried(a, b)
        hour = math.floor(self.t / HOUR + 1e-9) + 1
        while hour * HOUR <= found.t[-1] + 1e-6:
            y = found.sol(min(hour * HOUR, found.t[-1]))
            self.hourly.append([round(self.core(y), 3), round(self.probe(y), 3)])
            hour += 1
        self.t, self.y = float(found.t[-1]), found.y[:, -1].copy()
        if found.status == 1:
            return next(k for k, times in enumerate(found.t_events) if len(times))
        return None

    def run(self):
        cook = self.cook
        pits, wraps = list(cook["pit"][1:]), list(cook.get("wraps", []))
        spray = list(cook["spray"]) if cook.get("spray") else None
        covered, changed = [], []
        finish = cook["finish"]
        while True:
            events, done = [], []
            if "probe" in finish:
                events.append(lambda y: self.probe(y) - finish["probe"])
                done.append("off")
            elif "tender" in finish:
                events.append(
                    lambda y: min(1e3 * (self.tenderness(y) - 1.0), self.probe(y) - finish["tender"] + PROBE_MARGIN)
                )
                done.append("off")
            for what, queue in (("pit", pits), ("wrap", wraps)):
                if queue and "probe" in queue[0][0]:
                    goal = queue[0][0]["probe"]
                    events.append(lambda y, goal=goal: self.probe(y) - goal)
                    done.append(what)
            times = [(60.0, "limit")]
            if "h" in finish:
                times.append((finish["h"], "off"))
            for what, queue in (("pit", pits), ("wrap", wraps)):
                if queue and "h" in queue[0][0]:
                    times.append((queue[0][0]["h"], what))
            if spray and self.covered == "bare":
                times.append((spray[0], "spray"))
            until, next_ = min(times, key=lambda x: x[0])
            fired = self.go(until * HOUR, events)
            what = next_ if fired is None else done[fired]
            if what == "off":
                break
            if what == "pit":
                self.air(pits.pop(0)[1])
                changed.append(self.t / HOUR)
            elif what == "wrap":
                self.cover(wraps.pop(0)[1])
                covered.append(self.t / HOUR)
            elif what == "spray":
                self.y[2 * self.n] += spray[2] * self.p[FLUX]
                self.sprayed += spray[2] * self.p[FLUX]
                spray[0] += spray[1]
            else:
                raise RuntimeError(f"{cook['name']}: not done after 60 h")
        ready = self.t / HOUR
        at_ready = dict(probe=self.probe(self.y), core=self.core(self.y), tenderness=self.tenderness(self.y),
                        loss=self.lost())
        ends = []
        for stage in cook.get("after", []):
            if stage.get("cover"):
                self.cover(stage["cover"])
            air = {"counter": self.resting, "rest-box": self.resting + BOX_START, "warm-oven": stage.get("air_c")}
            self.place(stage["place"], air[stage["place"]])
            if stage["place"] != "rest-box":
                self.walls = 1.0
                self.air(air[stage["place"]])
            below = [lambda y: stage["until_core_c"] - self.core(y)] if stage.get("until_core_c") else []
            self.go(self.t + stage["hours"] * HOUR, below)
            ends.append(self.t / HOUR)
        o = 4 * self.n + 3
        evaporated, dripped, fat, taken, in_steam = self.y[o : o + 5]
        lost = evaporated + dripped
        water_left = (self.water() + lost - self.water_start - self.sprayed) / lost
        heat_left = (self.heat() - self.heat_start + in_steam + self.heat_carried - taken) / abs(taken)
        columns = self.p[COLUMNS]
        result = dict(
            covered_h=covered, pit_changed_h=changed, ready_h=ready, stage_ends_h=ends, at_ready=at_ready,
            evaporated_kg=evaporated * columns, dripped_kg=dripped * columns, fat_kg=fat * columns, meat_kg=self.mass,
            box_c=float(self.y[2 * self.n + 2]) if self.p[BOXED] else None,
            hourly_core_and_probe_c=self.hourly,
            balance=dict(water=water_left, heat=heat_left),
        )
        assert abs(water_left) < 1e-4, f"{cook['name']}: water is off by {water_left}"
        assert abs(heat_left) < 1e-3, f"{cook['name']}: heat is off by {heat_left}"
        return rounded(result)

    def lost(self):
        o = 4 * self.n + 3
        return float(self.y[o : o + 3].sum()) * self.p[COLUMNS] / self.mass


def held_water(T):
    return 4176.2 * T - 0.090864 * T**2 / 2 + 5.4731e-3 * T**3 / 3


def held_fat(T):
    melted = math.erf((T - 32.0) / (8.0 * math.sqrt(2.0))) + math.erf(32.0 / (8.0 * math.sqrt(2.0)))
    return 1984.2 * T + 1.4733 * T**2 / 2 - 4.8008e-3 * T**3 / 3 + 30e3 * melted


def rounded(value):
    if isinstance(value, float):
        return float(f"{value:.6g}")
    if isinstance(value, dict):
        return {k: rounded(v) for k, v in value.items()}
    if isinstance(value, list):
        return [rounded(v) for v in value]
    return value


def usual(slug, cut):
    """The cut's usual programme in a generic cooker, to the trade's target."""
    pit, wrap, target = cut["programme"]["pit_c"], cut["programme"]["wrap"], cut["programme"]["target_c"]
    return dict(
        name=f"{slug}, usual", cut=slug, kg=cut["kg"], cooker="generic", start_c=4.0, pit=[[{"h": 0.0}, pit]],
        wraps=[[{"probe": wrap[1]}, wrap[0]]] if wrap else [],
        finish={"tender": target} if cut["demand"] else {"probe": target},
    )


def main():
    cuts = json.loads((HERE / "cuts.json").read_text())
    given = json.loads((HERE / "cooks.json").read_text())
    only = sys.argv[1:]
    written = []
    for cook in given["cooks"] + [usual(slug, cut) for slug, cut in cuts.items()]:
        if only and not any(word in cook["name"] for word in only):
            continue
        result = Cook(cook, cuts[cook["cut"]], given["cells"]).run()
        print(f"{cook['name']}: {result['ready_h']:.3f} h, {result['balance']}", flush=True)
        written.append(dict(cook=cook, result=result))
    if only:
        return
    source = (
        f"the same continuous system on the same {given['cells']} cells by BDF of scipy {scipy.__version__} at a "
        "relative tolerance of 1e-7"
    )
    lines = ",\n".join(json.dumps(row, ensure_ascii=False) for row in written)
    out = HERE.parent / "data" / "stiff_solver.json"
    out.write_text(f'{{"source": {json.dumps(source)}, "cells": {given["cells"]}, "rows": [\n{lines}\n]}}\n')


if __name__ == "__main__":
    main()

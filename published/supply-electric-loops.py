"""Makes published/supply-electric-loops.csv: the loops of supply-electric-loops.json solved by scipy.

Independent of the engine's own way: all lead temperatures march in time together (solve_ivp, LSODA at 1e-9), the
currents found anew at every instant by brentq on curves read with numpy.interp; a loop without a duty simply
marches until nothing moves. Resistances and the heat off a cable are written out again here from their sources.
Needs scipy: python3 published/supply-electric-loops.py
"""
import csv
import json
import pathlib

import numpy as np
from scipy.constants import Stefan_Boltzmann, g, zero_Celsius
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).parent
# nominal mm2 rounded: (ohm/m, reference in degC, coefficient there)
OHMS = {
    50: (0.386e-3, 20, 0.00393),
    70: (0.272e-3, 20, 0.00393),
    95: (0.206e-3, 20, 0.00393),
    120: (0.161e-3, 20, 0.00393),
    107: (0.0608 / 304.8, 75, 0.00323),
    127: (0.0515 / 304.8, 75, 0.00323),
}


def run_resistance(lead, kelvin):
    ref, at, alpha = OHMS[round(lead["area"] * 1e6)]
    n = lead.get("parallels", 1)
    ohms = lead["length"] * ref * (1 + alpha * (kelvin - zero_Celsius - at)) / n
    for joint in lead.get("joints", []):
        ohms += joint["resistance"] / (n if joint.get("carries") == "conductor" else 1)
    return ohms


def surface(diameter, hot, cold, emissivity):
    film = (hot + cold) / 2
    mu = 1.458e-6 * film**1.5 / (film + 110.4)
    k = 2.64638e-3 * film**1.5 / (film + 245.4 * 10 ** (-12 / film))
    rho = 101325 / (287.05287 * film)
    pr = mu * 1006 / k
    ra = g * (hot - cold) / film * diameter**3 * (rho / mu) ** 2 * pr
    nu = (0.6 + 0.387 * max(ra, 0) ** (1 / 6) / (1 + (0.559 / pr) ** (9 / 16)) ** (8 / 27)) ** 2
    return np.pi * diameter * (nu * k / diameter * (hot - cold) + emissivity * Stefan_Boltzmann * (hot**4 - cold**4))


def heat_off(lead, kelvin, ambient):
    if kelvin <= ambient:
        return 0.0
    c = lead["covering"]
    passes = 2 * np.pi / (c["thermal_resistivity"] * np.log(c["outside_diameter"] / c["conductor_diameter"]))
    ts = brentq(
        lambda t: passes * (kelvin - t) - surface(c["outside_diameter"], t, ambient, c["emissivity"]),
        ambient, kelvin, xtol=1e-10,
    )
    return passes * (kelvin - ts)


def capacity(lead):
    c = lead["covering"]
    d, big = c["conductor_diameter"], c["outside_diameter"]
    p = 1 / (2 * np.log(big / d)) - 1 / ((big / d) ** 2 - 1)
    return 3.45e6 * lead["area"] + p * 2e6 * np.pi / 4 * (big**2 - d**2)


def curve(source):
    c = source["characteristic"]
    if c["kind"] == "points":
        return [(p["voltage"], p["current"]) for p in reversed(c["points"])]
    return [(0.0, c["no_load_voltage"] / c["slope"]), (c["no_load_voltage"], 0.0)]


def solve(loop, kelvins):
    """Voltage where the sources join, and the currents of the sources, at given lead temperatures."""
    shared = loop["leads"]
    series = sum(run_resistance(lead, t) for lead, t in zip(shared, kelvins))
    rest = iter(kelvins[len(shared):])
    own = [sum(run_resistance(lead, next(rest)) for lead in b.get("leads", [])) for b in loop["sources"]]
    curves = [np.array(curve(b["source"])) for b in loop["sources"]]

    def currents(volts):
        found = []
        for points, ohms in zip(curves, own):
            give = lambda i: np.interp(volts + i * ohms, points[:, 0], points[:, 1], right=0.0)
            most = points[0, 1]
            found.append(0.0 if give(0.0) <= 0 else brentq(lambda i: give(i) - i, 0, most + 1, xtol=1e-11))
        return found

    highest = max(points[-1, 0] for points in curves)
    arc = loop["arc"]
    if arc["holds"] == "current":
        volts = brentq(lambda v: sum(currents(v)) - arc["current"], 0, highest, xtol=1e-12)
    else:
        volts = brentq(lambda v: v - arc["voltage"] - series * sum(currents(v)), arc["voltage"], highest, xtol=1e-12)
    return volts, currents(volts), series


def march(loop):
    shared = loop["leads"]
    branches = [(k, lead) for k, b in enumerate(loop["sources"]) for lead in b.get("leads", [])]
    leads = [(None, lead) for lead in shared] + branches
    ambient = loop["ambient"]

    def rate(_, kelvins, arc):
        _, each, _ = solve(loop, kelvins) if arc else (0, [0.0] * len(loop["sources"]), 0)
        out = []
        for (k, lead), t in zip(leads, kelvins):
            n = lead.get("parallels", 1)
            amps = (sum(each) if k is None else each[k]) / n
            joints = {**lead, "joints": [], "parallels": 1, "length": 1}
            out.append((amps**2 * run_resistance(joints, t) - heat_off(lead, t, ambient)) / capacity(lead))
        return out

    state, peak = np.full(len(leads), ambient), np.full(len(leads), ambient)
    for part in loop.get("duty") or [{"arc": True, "duration": 60_000}]:
        done = solve_ivp(rate, (0, part["duration"]), state, "LSODA", args=(part["arc"],), rtol=1e-9, atol=1e-9)
        state = done.y[:, -1]
        # A conductor only rises or only falls while nothing is switched, so its ends hold its peak.
        peak = np.maximum(peak, state)
    return peak


with open(HERE / "supply-electric-loops.csv", "w", newline="") as file:
    table = csv.writer(file, lineterminator="\n")
    table.writerow(["loop", "quantity", "place", "value"])
    for name, loop in json.loads((HERE / "supply-electric-loops.json").read_text()).items():
        hot = march(loop)
        volts, each, series = solve(loop, hot)
        table.writerow([name, "available_V", 0, f"{volts:.9g}"])
        table.writerow([name, "arc_voltage_V", 0, f"{volts - series * sum(each):.9g}"])
        for place, amps in enumerate(each):
            table.writerow([name, "current_A", place, f"{amps:.9g}"])
        for place, kelvin in enumerate(hot):
            table.writerow([name, "temperature_K", place, f"{kelvin:.9g}"])

"""Makes published/supply-air-networks.csv: ten air networks solved by scipy.

Independent of the engine's own way: every node's mass balance at once, by scipy.optimize.root over the node
pressures; Colebrook in closed form with the Lambert function; choking of a hose as the greatest flow over all its
outlet pressures (scipy.optimize.minimize_scalar), not by a formula. Needs python3-scipy: python3 supply-air-networks.py
"""
import csv, json, pathlib
import numpy as np
from scipy.optimize import brentq, minimize_scalar, root
from scipy.special import lambertw

HERE = pathlib.Path(__file__).parent
R_AIR, RHO_FREE, RHO_ANR, T0 = 287.05287, 1e5 / (287.05287 * 293.15), 1.185, 293.15


def colebrook(re, rel):
    a, b = 2.51 / re, rel / 3.7
    exponent = np.log(np.log(10) / (2 * a)) + np.log(10) * b / (2 * a)
    if exponent < 700:
        return float((2 * lambertw(np.exp(exponent)).real / np.log(10) - b / a) ** -2)
    return brentq(lambda f: 1 / np.sqrt(f) + 2 * np.log10(b + a / np.sqrt(f)), 1e-3, 1)


def friction(re, rel):
    if re <= 2300:
        return 64 / re
    if re >= 4000:
        return colebrook(re, rel)
    s = (re - 2300) / 1700
    return (1 - s) * 64 / 2300 + s * colebrook(4000, rel)


def run_flow(e, p1, p2, t):
    if p2 >= p1:
        return 0.0
    d, area = e["bore"], np.pi / 4 * e["bore"] ** 2
    mu = 1.458e-6 * t ** 1.5 / (t + 110.4)
    bores = e["length"] / d + sum(f["lengthInBores"] * f["count"] for f in e["fittings"])

    def at(p):
        def miss(m):
            f = friction(4 * m / (np.pi * d * mu), e["roughness"] / d)
            return m ** 2 * R_AIR * t * (f * bores + 2 * np.log(p1 / p)) - area ** 2 * (p1 ** 2 - p ** 2)
        return brentq(miss, 1e-12, area * p1 / np.sqrt(R_AIR * t) * 3, xtol=1e-16, rtol=1e-14)

    best = minimize_scalar(lambda p: -at(p), bounds=(p1 * 1e-3, p1 * (1 - 1e-9)), method="bounded",
                           options={"xatol": 1e-3})
    return at(p2) if p2 > best.x else -best.fun


def iso_flow(c, b, p1, p2, t):
    if p2 >= p1:
        return 0.0
    x = max(0.0, (p2 / p1 - b) / (1 - b))
    return c * RHO_ANR * p1 * np.sqrt(T0 / t) * np.sqrt(1 - x * x)


def chain_flow(items, p1, p2, t):
    """Flow through items in series, by the flow at which the pressures left over meet p2."""
    if len(items) == 1:
        return item_flow(items[0], p1, p2, t)
    if p2 >= p1:
        return 0.0
    head, rest = items[0], items[1:]
    gap = lambda p: item_flow(head, p1, p, t) - chain_flow(rest, p, p2, t)
    p = brentq(gap, p2, p1, xtol=1e-9 * p1, rtol=1e-14)
    return chain_flow(rest, p, p2, t)


def item_flow(e, p1, p2, t):
    if e["kind"] in ("pipe", "hose"):
        return run_flow(e, p1, p2, t)
    if e["kind"] == "component":
        return iso_flow(e["conductance"], e["criticalRatio"], p1, p2, t)
    if e["kind"] == "parallel":
        return sum(chain_flow(branch, p1, p2, t) for branch in e["branches"])
    raise ValueError(e["kind"])


def solve(net):
    s, t = net["supply"], net["supply"]["temperature"]
    pa, path = s["atmosphere"], s["path"]
    n = len(path)
    flowing = [e for e in path if e["kind"] != "draw"]
    # Unknown: pressure behind every item that resists, as a share of the receiver's; one flow through all.
    p0 = net["receiver"] + pa

    def miss(x, holding):
        m, p, ps = x[0] * 1e-2, p0, []
        out = []
        extra = lambda i: sum(e["freeAir"] * RHO_FREE for e in path[i:] if e["kind"] == "draw")
        k = 1
        for i, e in enumerate(path):
            if e["kind"] == "draw":
                ps.append(p)
                continue
            q, here = m + extra(i), x[k] * p0
            k += 1
            if e["kind"] == "regulator":
                if holding:
                    out.append((here - (pa + e["set"] - e["droop"] * q / RHO_FREE)) / p0)
                elif "wideOpen" in e:
                    w = e["wideOpen"]
                    out.append((iso_flow(w["conductance"], w["criticalRatio"], p, here, t) - q) / 1e-2)
                else:
                    out.append((here - p) / p0)
            else:
                out.append((item_flow(e, p, here, t) - q) / 1e-2)
            p = here
            ps.append(p)
        torch = s["torch"]
        out.append((iso_flow(torch["conductance"], torch["criticalRatio"], p, pa, t) - m) / 1e-2)
        return out, ps

    def attempt(holding):
        best = None
        for fall in (0.02, 0.05, 0.1, 0.2, 0.01, 0.15, 0.3):
            reg = next((i for i, e in enumerate(flowing) if e["kind"] == "regulator"), None)
            start, p = [], 1.0
            for i, e in enumerate(flowing):
                p *= 1 - fall
                if holding and i == reg:
                    p = min(p, (pa + e["set"]) / p0)
                start.append(p)
            m0 = s["torch"]["conductance"] * RHO_ANR * start[-1] * p0 * 100
            for method in ("hybr", "lm"):
                try:
                    r = root(lambda x: miss(x, holding)[0], [m0 * 0.9, *start], method=method, tol=1e-13)
                except ValueError:
                    continue
                size = np.abs(r.fun).max()
                if best is None or size < best[0]:
                    best = (size, r.x)
            if best and best[0] < 1e-11:
                break
        assert best[0] < 2e-9, (net["name"], holding, best)
        return best[1][0] * 1e-2, miss(best[1], holding)[1], best[0]

    has = any(e["kind"] == "regulator" for e in path)
    m, ps, size = attempt(False)
    if has:
        i = next(i for i, e in enumerate(path) if e["kind"] == "regulator")
        q = m + sum(e["freeAir"] * RHO_FREE for e in path[i:] if e["kind"] == "draw")
        if ps[i] > pa + path[i]["set"] - path[i]["droop"] * q / RHO_FREE:
            m, ps, size = attempt(True)
    return m, ps, size


with open(HERE / "supply-air-networks.csv", "w", newline="") as out:
    w = csv.writer(out, lineterminator="\n")
    w.writerow(["network", "behind", "torch_flow_kg_per_s", "pressure_Pa_abs"])
    for net in json.load(open(HERE / "supply-air-networks.json")):
        m, ps, size = solve(net)
        print(net["name"], m, size)
        for e, p in zip(net["supply"]["path"], ps):
            w.writerow([net["name"], e["id"], f"{m:.9g}", f"{p:.9g}"])

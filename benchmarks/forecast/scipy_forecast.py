"""The forward forecast with SciPy's solve_ivp: the equations of column.h, same names. Written in two ways:

usual: the right side in NumPy, stages by solve_ivp's event functions, Jacobian by its own differences.
tuned: at 2 to 16 unknowns plain Python floats are faster than NumPy's small arrays, so right side and exact Jacobian are scalar
loops; stages are found on the solver's own dense output, in the one step that holds them, rather than by solve_ivp's event
functions, which are called at every step. LSODA gets the Jacobian by bands. The state holds temperatures as their excess over the
air, so that one relative tolerance serves both kinds of unknown (BDF takes no more than one).

Usage: scipy_forecast.py <usual|tuned> <LSODA|BDF> <repeats> <tolerance>...   with the problem on stdin (see problem.ts).
For a tolerance r: rtol r; atol r/10 for conversions, 100 r (K) for temperatures. One JSON line a tolerance.
"""
import json
import sys
import time
import warnings
from bisect import bisect_left
from math import exp, log

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

WARMED_TO, CONVERTED_TO, HARDENED_BY, THICKENED_BY, MEAN_PEAK = range(5)
BANDS = 2
# The Fortran LSODA (SciPy before 1.17) wants room for its pivoting below the bands.
BAND_ROWS = (3 if tuple(map(int, scipy.__version__.split(".")[:2])) < (1, 17) else 2) * BANDS + 1


class Column:
    """One body, read from the problem's lines."""

    def __init__(self, lines):
        def values(name):
            words = next(lines).split()
            assert words[0] == name and int(words[1]) == len(words) - 2, (name, words[:2])
            return [float(word) for word in words[2:]]

        self.capacity = values("capacity")
        self.conductance = values("conductance")
        self.heat = values("heat")
        self.excess, self.flow, self.slope = values("excess"), values("flow"), values("slope")
        self.last_loss, self.air, self.end = values("surroundings")
        (self.ln_front, self.e, self.rho, self.order, self.tg_start, self.tg_span, self.lam, self.offset,
         self.width) = values("kinetics")
        self.ln_eta, self.e_eta, self.gel, self.eta_a, self.eta_b, self.fresh_eta = values("viscosity")
        self.start = np.array(values("start"))
        self.events = list(zip(map(int, values("kind")), values("level")))
        self.nodes, self.reacting = len(self.capacity), len(self.heat)
        self.at_a = [2 * i for i in range(self.reacting)]
        self.at_t = [2 * j + 1 if j < self.reacting else self.reacting + j for j in range(self.nodes)]
        self.size = self.nodes + self.reacting
        self.start[self.at_t] -= self.air

    def tg(self, a):
        return self.tg_start + self.tg_span * self.lam * a / (1 - (1 - self.lam) * a)

    def rate(self, a, t):
        if a >= 1:
            return 0.0
        frozen = exp(min(700.0, (self.tg(a) - t - self.offset) / self.width))
        return exp(self.ln_front - self.e / t) * (1 + a / self.rho) * (1 - a) ** self.order / (1 + frozen)

    def rate_slopes(self, a, t):
        f = self.rate(a, t)
        if f == 0:
            return 0.0, 0.0
        room = 1 - (1 - self.lam) * a
        stuck = 1 / (self.width * (1 + exp(min(700.0, -(self.tg(a) - t - self.offset) / self.width))))
        by_a = f * (1 / (self.rho + a) - self.order / (1 - a) - stuck * self.tg_span * self.lam / (room * room))
        return by_a, f * (self.e / (t * t) + stuck)

    def loss(self, excess):
        """Heat lost by node 0, and its derivative: the cubic table."""
        size, sign = abs(excess), -1 if excess < 0 else 1
        if size >= self.excess[-1]:
            return sign * (self.flow[-1] + self.slope[-1] * (size - self.excess[-1])), self.slope[-1]
        i = max(0, bisect_left(self.excess, size) - 1)
        h = self.excess[i + 1] - self.excess[i]
        s = size - self.excess[i]
        u = s / h
        v = 1 - u
        f0, f1, s0, s1 = self.flow[i], self.flow[i + 1], self.slope[i], self.slope[i + 1]
        return (
            sign * (v * v * ((1 + 2 * u) * f0 + s * s0) + u * u * ((1 + 2 * v) * f1 - (h - s) * s1)),
            6 * u * v * (f1 - f0) / h + v * (1 - 3 * u) * s0 + u * (3 * u - 2) * s1,
        )

    def slopes(self, _time, state):
        y = state.tolist()
        dy = [0.0] * self.size
        last = self.nodes - 1
        excess = y[self.at_t[0]]
        incoming = -self.loss(excess)[0]
        for j in range(self.nodes):
            if j < last:
                beyond = y[self.at_t[j + 1]]
                outgoing = self.conductance[j] * (excess - beyond)
            else:
                beyond = 0.0
                outgoing = self.last_loss * excess
            power = incoming - outgoing
            if j < self.reacting:
                f = dy[2 * j] = self.rate(y[2 * j], excess + self.air)
                power += self.heat[j] * f
            dy[self.at_t[j]] = power / self.capacity[j]
            incoming = outgoing
            excess = beyond
        return dy

    def jacobian_entries(self, y):
        """(row, column, value) of every non-zero."""
        for j in range(self.nodes):
            row = self.at_t[j]
            own = self.conductance[j - 1] if j > 0 else self.loss(y[row])[1]
            own += self.conductance[j] if j + 1 < self.nodes else self.last_loss
            diagonal = -own / self.capacity[j]
            if j < self.reacting:
                by_a, by_t = self.rate_slopes(y[2 * j], y[row] + self.air)
                per_kelvin = self.heat[j] / self.capacity[j]
                yield 2 * j, 2 * j, by_a
                yield 2 * j, row, by_t
                yield row, 2 * j, per_kelvin * by_a
                diagonal += per_kelvin * by_t
            yield row, row, diagonal
            if j > 0:
                yield row, self.at_t[j - 1], self.conductance[j - 1] / self.capacity[j]
            if j + 1 < self.nodes:
                yield row, self.at_t[j + 1], self.conductance[j] / self.capacity[j]

    def jacobian(self, _time, state):
        full = np.zeros((self.size, self.size))
        for row, col, value in self.jacobian_entries(state.tolist()):
            full[row, col] = value
        return full

    def jacobian_bands(self, _time, state):
        """LSODA's packing: bands[row - column + upper, column]."""
        bands = np.zeros((BAND_ROWS, self.size))
        for row, col, value in self.jacobian_entries(state.tolist()):
            bands[row - col + BANDS, col] = value
        return bands

    def event(self, kind, level, y):
        """A quantity of the depth-mean state that rises through 0; columns of `y` are states."""
        a = y[: 2 * self.reacting : 2].mean(axis=0)
        t = y[1 : 2 * self.reacting : 2].mean(axis=0) + self.air
        if kind == WARMED_TO:
            return t - level
        if kind == CONVERTED_TO:
            return a - level
        if kind == HARDENED_BY:
            return self.tg(a) - t - level
        left = np.maximum(self.gel - a, 1e-300)
        ln_ratio = (self.eta_a + self.eta_b * a) * np.log(self.gel / left)
        fluidity = np.where(a >= self.gel, 0.0, np.exp(-self.ln_eta - self.e_eta / t - ln_ratio))
        return 1 / level - self.fresh_eta * fluidity

    def mean_cooling(self, state):
        return -sum(self.slopes(0.0, state)[1 : 2 * self.reacting : 2])


class ArrayColumn(Column):
    """The same right side in NumPy, and event functions."""

    def __init__(self, lines):
        super().__init__(lines)
        self.films = np.array(self.at_t[: self.reacting])
        self.temperatures = np.array(self.at_t)
        self.per_capacity = 1 / np.array(self.capacity)
        self.g, self.q = np.array(self.conductance), np.array(self.heat)

    def slopes(self, _time, y):
        a, excess = y[self.at_a], y[self.temperatures]
        t = excess[: self.reacting] + self.air
        left = np.maximum(1 - a, 0)
        frozen = np.exp(np.minimum((self.tg(a) - t - self.offset) / self.width, 700))
        f = np.exp(self.ln_front - self.e / t) * (1 + a / self.rho) * left**self.order / (1 + frozen)
        power = np.zeros(self.nodes)
        flux = self.g * np.diff(excess)
        power[:-1] += flux
        power[1:] -= flux
        power[0] -= self.loss(excess[0])[0]
        power[-1] -= self.last_loss * excess[-1]
        power[: self.reacting] += self.q * f
        dy = np.empty(self.size)
        dy[self.at_a] = f
        dy[self.temperatures] = power * self.per_capacity
        return dy

    def mean_cooling(self, state):
        return -self.slopes(0.0, state)[self.films].sum()

    def event_functions(self):
        def rising(function):
            function.direction = 1
            return function

        return [
            rising(lambda _t, y, kind=kind, level=level: self.mean_cooling(y) if kind == MEAN_PEAK else self.event(kind, level, y))
            for kind, level in self.events
        ]


def first_time(column, kind, level, solution):
    """First time the event rises through 0: the step that holds it, then its root on the step's own interpolant."""
    if kind == MEAN_PEAK:
        # The slope changes sign next to the highest stored mean temperature.
        top = int(np.argmax(solution.y[1 : 2 * column.reacting : 2].sum(axis=0)))
        values = [(i, column.mean_cooling(solution.y[:, i])) for i in range(max(0, top - 1), top + 2)]
        step = next((i for (i, at), (_, to) in zip(values, values[1:]) if at < 0 <= to), None)
        of = column.mean_cooling
    else:
        values = column.event(kind, level, solution.y)
        later = np.flatnonzero(values[1:] >= 0)
        step = None if later.size == 0 else int(later[0])
        of = lambda y: float(column.event(kind, level, y))
    if step is None:
        return None
    inside = solution.sol.interpolants[step]
    start, end = solution.t[step], solution.t[step + 1]
    at_start, at_end = of(inside(start)), of(inside(end))
    # Rounding may put the crossing a hair outside the step.
    if at_start >= 0:
        return start
    return end if at_end < 0 else brentq(lambda when: of(inside(when)), start, end, xtol=1e-6)


def cure(column, method, relative):
    atol = np.full(column.size, 100 * relative)
    atol[column.at_a] = 0.1 * relative
    if isinstance(column, ArrayColumn):
        solution = solve_ivp(column.slopes, (0.0, column.end), column.start, method=method, rtol=relative, atol=atol,
                             events=column.event_functions())
        assert solution.success, solution.message
        return solution, [None if len(times) == 0 else float(times[0]) for times in solution.t_events]
    banded = method == "LSODA" and column.nodes > 1
    extra = {"lband": BANDS, "uband": BANDS, "jac": column.jacobian_bands} if banded else {"jac": column.jacobian}
    solution = solve_ivp(column.slopes, (0.0, column.end), column.start, method=method, rtol=relative, atol=atol,
                         dense_output=True, **extra)
    assert solution.success, solution.message
    return solution, [first_time(column, kind, level, solution) for kind, level in column.events]


def told(column, answer):
    solution, reached = answer
    end = solution.y[:, -1]
    return {
        "steps": len(solution.t) - 1,
        "conversion": float(end[column.at_a].mean()),
        "temperature_K": float(end[column.at_t[: column.reacting]].mean()) + column.air,
        "reached": reached,
    }


def main(way, method, repeats, tolerances):
    warnings.simplefilter("error")
    lines = iter(sys.stdin)
    kind = {"usual": ArrayColumn, "tuned": Column}[way]
    bodies = [kind(lines), kind(lines)]
    for relative in tolerances:
        cup, film = (cure(body, method, relative) for body in bodies)
        start = time.process_time()
        for _ in range(repeats):
            cup, film = (cure(body, method, relative) for body in bodies)
        cpu = (time.process_time() - start) / repeats
        print(json.dumps({"tolerance": relative, "cpu_s": cpu, "cup": told(bodies[0], cup), "film": told(bodies[1], film),
                          "scipy": scipy.__version__}))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], int(sys.argv[3]), [float(word) for word in sys.argv[4:]])

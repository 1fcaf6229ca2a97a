"""The scheme of core/film/map-sweep.ts in NumPy: every line of a rectangle at once, elimination from both ends along it.

Usage: film-map.py <columns> <rows> <width_m> <depth_m> <film_m> <theta> <growth>; prints steps, seconds, share lost.
"""
import json
import sys
import time

import numpy as np


class Lines:
    """Working store for one direction; `h` is (cells along the line, lines), kept contiguous in the lines."""

    def __init__(self, n: int, lines: int):
        self.n = n
        self.middle = n // 2
        self.rights = n - 1 - self.middle
        self.m = np.empty((n - 1, lines))
        self.give = np.empty((n, lines))
        self.rest = np.empty((n, lines))
        self.square = np.empty((n, lines))
        self.keeps = np.empty(lines)
        self.rhs = np.empty(lines)
        self.inverse = np.empty(lines)
        self.work = np.empty((n - 1, lines))

    def sweep(self, h: np.ndarray, k: float) -> float:
        n, middle, m, give, rest = self.n, self.middle, self.m, self.give, self.rest
        keeps, rhs, inverse = self.keeps, self.rhs, self.inverse
        np.multiply(h, h, out=self.square)
        np.add(h[:-1], h[1:], out=m)
        np.add(self.square[:-1], self.square[1:], out=self.work)
        m *= self.work
        m *= k
        sink_a = 2 * k * h[0] ** 3
        sink_b = 2 * k * h[-1] ** 3

        def eliminate(cells, face):
            for i in cells:
                mi = m[face(i)]
                np.add(keeps, mi, out=inverse)
                np.divide(1.0, inverse, out=inverse)
                np.multiply(mi, inverse, out=give[i])
                np.multiply(rhs, inverse, out=rest[i])
                np.multiply(keeps, give[i], out=keeps)
                np.add(keeps, 1.0, out=keeps)
                np.multiply(mi, rest[i], out=rhs)
                np.add(rhs, h[i + 1 if face(i) == i else i - 1], out=rhs)

        np.add(1.0, sink_a, out=keeps)
        rhs[:] = h[0]
        eliminate(range(middle), lambda i: i)
        keeps_left, rhs_left = keeps.copy(), rhs.copy()
        np.add(1.0, sink_b, out=keeps)
        rhs[:] = h[-1]
        eliminate(range(n - 1, middle, -1), lambda i: i - 1)
        h[middle] = (rhs_left + rhs - h[middle]) / (keeps_left + keeps - 1)
        for i in range(middle - 1, -1, -1):
            np.multiply(give[i], h[i + 1], out=h[i])
            h[i] += rest[i]
        for i in range(middle + 1, n):
            np.multiply(give[i], h[i - 1], out=h[i])
            h[i] += rest[i]
        return float(sink_a @ h[0] + sink_b @ h[-1])


def run(nx, ny, width, depth, film, stop, growth):
    dx, dy, c = width / nx, depth / ny, 1100 * 9.80665 / 3
    small = min(dx, dy)
    h = np.full((ny, nx), film)
    along_y, along_x = Lines(ny, nx), Lines(nx, ny)
    turned = np.empty((nx, ny))
    first = small * small / (2 * c * film**3)
    theta, steps, lost = 0.0, 0, 0.0
    start = time.perf_counter()
    while theta < stop:
        by = min(max(first, growth * theta), stop - theta)
        kx, ky = c * by / (4 * dx * dx), c * by / (4 * dy * dy)
        for turn in range(2):
            if (steps + turn) % 2 == 0:
                turned[:] = h.T
                lost += along_x.sweep(turned, kx)
                h[:] = turned.T
            else:
                lost += along_y.sweep(h, ky)
        theta = stop if by == stop - theta else theta + by
        steps += 1
    seconds = time.perf_counter() - start
    return {
        "steps": steps,
        "seconds": round(seconds, 6),
        "lost": lost / (film * nx * ny),
        "middle": float(h[ny // 2, nx // 2]),
        "numpy": np.__version__,
    }


if __name__ == "__main__":
    words = sys.argv[1:]
    print(json.dumps(run(int(words[0]), int(words[1]), *map(float, words[2:]))))

"""The maps of core/look/moves in NumPy, all samples of a move at once. Same input and output as look.c."""

import sys
import time

import numpy as np

FIGURES, WAVE, SHEARS = 12, 256, 4


def drag(f, x, y):
    half, film, last, pitch = f[6:10]
    off = (y - f[2]) * f[3] - (x - f[1]) * f[4]
    tooth = np.clip(np.floor(off / pitch + last / 2 + 0.5), 0, last)
    beside = np.abs(off - (tooth - last / 2) * pitch)
    d = beside - half
    share = np.where(d <= 0, 1.0, 4 / np.pi * np.arctan(np.exp(-np.pi * np.maximum(d, 0) / (2 * film))))
    along = np.where(beside > half + 8 * film, 0.0, f[5] * share)
    return x - along * f[3], y - along * f[4]


def stroke(f, x, y):
    bx, by, c, s, length, reach, steps, go = f[1:9]
    if steps == 0:
        return x, y
    step = length / steps / reach
    px, py = x - bx, y - by
    v, along = (py * c - px * s) / reach, (px * c + py * s) / reach
    at = np.flatnonzero((np.abs(v) < 1) & (along > -1) & (along < length / reach + 1))
    v, along = v[at], along[at]
    for k in range(int(steps) - 1, -1, -1):
        u0 = along - (k + 0.5) * step
        near = np.flatnonzero(np.abs(u0) < 1)
        if near.size == 0:
            continue
        u0, w0 = u0[near], v[near]
        w = 1 - w0 * w0
        push = go * w * (1 - 5 * w0 * w0)
        u = u0
        for _ in range(3):
            q = np.maximum(0, 1 - u * u)
            u = u - (u - u0 + push * q * q * q) / (1 - 6 * push * u * q * q)
        q = np.maximum(0, 1 - u * u)
        v[near] = w0 - go * 6 * u * q * q * w0 * w * w
        along[near] = u + (k + 0.5) * step
    x, y = x.copy(), y.copy()
    x[at] = bx + reach * (along * c - v * s)
    y[at] = by + reach * (along * s + v * c)
    return x, y


def swirl(f, x, y):
    px, py = x - f[1], y - f[2]
    angle = f[3] * np.exp(-np.sqrt(px * px + py * py) / f[4])
    c, s = np.cos(angle), np.sin(angle)
    return f[1] + c * px + s * py, f[2] - s * px + c * py


def waver(f, x, y, waves):
    for shear in range(SHEARS - 1, -1, -1):
        c, s = f[4 + 2 * shear], f[5 + 2 * shear]
        wave = waves[int(f[3]) * SHEARS + shear]
        at = (y * c - x * s) / f[2]
        low = np.floor(at)
        t = at - low
        j = low.astype(np.int64)
        a, b = wave[j & (WAVE - 1)], wave[(j + 1) & (WAVE - 1)]
        along = f[1] * (a + (b - a) * t * t * t * (t * (6 * t - 15) + 10))
        x, y = x - along * c, y - along * s
    return x, y


def tilt(f, x, y):
    c, s, draw = f[3:6]
    px, py = x - f[1], y - f[2]
    along, across = (px * c + py * s) / draw, (py * c - px * s) * draw
    return f[1] + along * c - across * s, f[2] + along * s + across * c


def paint(columns, rows, width, depth, ground, figures, waves):
    x = np.tile((np.arange(columns) + 0.5) / columns * width, rows)
    y = np.repeat((rows - np.arange(rows) - 0.5) / rows * depth, columns)
    out = np.full(columns * rows, ground, np.uint8)
    sample = np.arange(columns * rows)
    for f in figures[::-1]:
        kind = int(f[0])
        if kind == 0:
            px, py = x - f[1], y - f[2]
            d2 = px * px + py * py
            hit = d2 <= f[3]
            out[sample[hit]] = int(f[4])
            on = ~hit
            px, py, sample = px[on], py[on], sample[on]
            shrink = np.sqrt(1 - f[3] / d2[on])
            x, y = f[1] + px * shrink, f[2] + py * shrink
        elif kind == 4:
            x, y = waver(f, x, y, waves)
        else:
            x, y = {1: drag, 2: stroke, 3: swirl, 5: tilt}[kind](f, x, y)
    return out


def main():
    words = sys.stdin.read().split()
    columns, rows, ground, moves, wavers = int(words[0]), int(words[1]), int(words[4]), int(words[5]), int(words[6])
    width, depth = float(words[2]), float(words[3])
    numbers = np.array(words[7:], float)
    figures = numbers[: FIGURES * moves].reshape(moves, FIGURES)
    waves = numbers[FIGURES * moves :].reshape(SHEARS * wavers, WAVE)
    start = time.perf_counter()
    out = paint(columns, rows, width, depth, ground, figures, waves)
    seconds = time.perf_counter() - start
    sys.stdout.buffer.write(f"{seconds:.6f}\n".encode() + out.tobytes())


if __name__ == "__main__":
    main()

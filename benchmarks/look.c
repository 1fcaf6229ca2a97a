/*
 * The maps of core/look/moves in C: the same figures, the same samples, in double precision. Reads from standard input: columns rows
 * width_m depth_m ground moves wavers, then 12 figures a move, then 1024 values a waver. Writes colours to standard output after
 * one line "seconds"; with one thread. `plain`: one sample after another; `blocks`: 32 by 32 samples move by move, as the app
 * does, and skipping moves that do not reach a block.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { FIGURES = 12, WAVE = 256, SHEARS = 4, BLOCK = 32, MOST = BLOCK * BLOCK };
enum { PUDDLE, DRAG, STROKE, SWIRL, WAVER, TILT };

static double xs[MOST], ys[MOST];
static int sample[MOST], count;
static unsigned char found[MOST];

static void puddle(const double *f) {
  const double cx = f[1], cy = f[2], r2 = f[3];
  int left = 0;
  for (int i = 0; i < count; i++) {
    const double x = xs[i] - cx, y = ys[i] - cy, d2 = x * x + y * y;
    if (d2 <= r2) {
      found[sample[i]] = (unsigned char)f[4];
      continue;
    }
    const double shrink = sqrt(1 - r2 / d2);
    xs[left] = cx + x * shrink;
    ys[left] = cy + y * shrink;
    sample[left++] = sample[i];
  }
  count = left;
}

static void drag(const double *f) {
  const double half = f[6], film = f[7], last = f[8], pitch = f[9], band = last / 2 * pitch + half + 8 * film;
  for (int i = 0; i < count; i++) {
    const double off = (ys[i] - f[2]) * f[3] - (xs[i] - f[1]) * f[4];
    if (off > band || off < -band) continue;
    const double tooth = fmin(last, fmax(0, floor(off / pitch + last / 2 + 0.5)));
    const double beside = fabs(off - (tooth - last / 2) * pitch), d = beside - half;
    if (beside > half + 8 * film) continue;
    const double along = f[5] * (d <= 0 ? 1 : 4 / M_PI * atan(exp(-M_PI * d / (2 * film))));
    xs[i] -= along * f[3];
    ys[i] -= along * f[4];
  }
}

static void stroke(const double *f) {
  static double alongs[MOST], acrosses[MOST];
  static int at[MOST];
  const double c = f[3], s = f[4], reach = f[6], go = f[8];
  const int steps = (int)f[7];
  if (steps == 0) return;
  const double step = f[5] / steps / reach, end = f[5] / reach + 1;
  int n = 0;
  double furthest = -1;
  for (int i = 0; i < count; i++) {
    const double px = xs[i] - f[1], py = ys[i] - f[2];
    const double v = (py * c - px * s) / reach, along = (px * c + py * s) / reach;
    if (v >= 1 || v <= -1 || along <= -1 || along >= end) continue;
    at[n] = i;
    alongs[n] = along;
    acrosses[n++] = v;
    if (along > furthest) furthest = along;
  }
  if (n == 0) return;
  int k = (int)floor((furthest + 1) / step + 0.5);
  if (k > steps - 1) k = steps - 1;
  for (; k >= 0; k--) {
    const double tool = (k + 0.5) * step;
    int ahead = 1;
    for (int i = 0; i < n; i++) {
      const double u0 = alongs[i] - tool;
      if (u0 >= 1) continue;
      ahead = 0;
      if (u0 <= -1) continue;
      const double v = acrosses[i], w = 1 - v * v, push = go * w * (1 - 5 * v * v);
      double u = u0, q;
      for (int round = 0; round < 3; round++) {
        q = 1 - u * u;
        if (q < 0) q = 0;
        u -= (u - u0 + push * q * q * q) / (1 - 6 * push * u * q * q);
      }
      q = 1 - u * u;
      if (q < 0) q = 0;
      acrosses[i] = v - go * 6 * u * q * q * v * w * w;
      alongs[i] = u + tool;
    }
    if (ahead) break;
  }
  for (int i = 0; i < n; i++) {
    const double along = alongs[i] * reach, v = acrosses[i] * reach;
    xs[at[i]] = f[1] + along * c - v * s;
    ys[at[i]] = f[2] + along * s + v * c;
  }
}

static void swirl(const double *f) {
  for (int i = 0; i < count; i++) {
    const double x = xs[i] - f[1], y = ys[i] - f[2], d = sqrt(x * x + y * y);
    if (d > 40 * f[4]) continue;
    const double angle = f[3] * exp(-d / f[4]), c = cos(angle), s = sin(angle);
    xs[i] = f[1] + c * x + s * y;
    ys[i] = f[2] - s * x + c * y;
  }
}

static void waver(const double *f, const double *waves) {
  for (int shear = SHEARS - 1; shear >= 0; shear--) {
    const double c = f[4 + 2 * shear], s = f[5 + 2 * shear];
    const double *wave = waves + ((int)f[3] * SHEARS + shear) * WAVE;
    for (int i = 0; i < count; i++) {
      const double at = (ys[i] * c - xs[i] * s) / f[2], low = floor(at), t = at - low;
      const int j = (int)low;
      const double a = wave[j & (WAVE - 1)], b = wave[(j + 1) & (WAVE - 1)];
      const double along = f[1] * (a + (b - a) * t * t * t * (t * (6 * t - 15) + 10));
      xs[i] -= along * c;
      ys[i] -= along * s;
    }
  }
}

static void tilt(const double *f) {
  const double c = f[3], s = f[4], shorter = 1 / f[5];
  for (int i = 0; i < count; i++) {
    const double x = xs[i] - f[1], y = ys[i] - f[2];
    const double along = (x * c + y * s) * shorter, across = (y * c - x * s) * f[5];
    xs[i] = f[1] + along * c - across * s;
    ys[i] = f[2] + along * s + across * c;
  }
}

/* 0 when a drag, stroke or swirl surely moves nothing of the box of all samples. */
static int reaches(const double *f) {
  double left = xs[0], right = left, front = ys[0], back = front;
  for (int i = 1; i < count; i++) {
    if (xs[i] < left) left = xs[i];
    if (xs[i] > right) right = xs[i];
    if (ys[i] < front) front = ys[i];
    if (ys[i] > back) back = ys[i];
  }
  const double mx = (left + right) / 2, my = (front + back) / 2, w = (right - left) / 2, h = (back - front) / 2;
  if (f[0] == DRAG) {
    const double band = f[8] / 2 * f[9] + f[6] + 8 * f[7];
    return fabs((my - f[2]) * f[3] - (mx - f[1]) * f[4]) <= band + h * fabs(f[3]) + w * fabs(f[4]);
  }
  if (f[0] == SWIRL) {
    const double dx = fmax(fmax(left - f[1], f[1] - right), 0), dy = fmax(fmax(front - f[2], f[2] - back), 0);
    return dx * dx + dy * dy <= 1600 * f[4] * f[4];
  }
  const double c = f[3], s = f[4], px = mx - f[1], py = my - f[2];
  return fabs(py * c - px * s) <= f[6] + w * fabs(s) + h * fabs(c) &&
         fabs(px * c + py * s - f[5] / 2) <= f[5] / 2 + f[6] + w * fabs(c) + h * fabs(s);
}

static void follow(const double *figures, const double *waves, int moves, int ground, int n, int skip) {
  count = n;
  for (int i = 0; i < n; i++) sample[i] = i;
  memset(found, ground, n);
  for (int move = moves - 1; move >= 0 && count > 0; move--) {
    const double *f = figures + move * FIGURES;
    const int kind = (int)f[0];
    if (skip && (kind == DRAG || kind == STROKE || kind == SWIRL) && !reaches(f)) continue;
    switch (kind) {
      case PUDDLE: puddle(f); break;
      case DRAG: drag(f); break;
      case STROKE: stroke(f); break;
      case SWIRL: swirl(f); break;
      case WAVER: waver(f, waves); break;
      default: tilt(f);
    }
  }
}

int main(int argc, char **argv) {
  const int blocks = argc > 1 && argv[1][0] == 'b';
  int columns, rows, ground, moves, wavers;
  double width, depth;
  if (scanf("%d %d %lf %lf %d %d %d", &columns, &rows, &width, &depth, &ground, &moves, &wavers) != 7) return 2;
  double *figures = malloc(sizeof *figures * FIGURES * moves), *waves = malloc(sizeof *waves * (SHEARS * WAVE * wavers + 1));
  for (int i = 0; i < FIGURES * moves; i++)
    if (scanf("%lf", figures + i) != 1) return 2;
  for (int i = 0; i < SHEARS * WAVE * wavers; i++)
    if (scanf("%lf", waves + i) != 1) return 2;
  unsigned char *out = malloc((size_t)columns * rows);
  const int side = blocks ? BLOCK : 1;
  struct timespec from, to;
  clock_gettime(CLOCK_MONOTONIC, &from);
  for (int top = 0; top < rows; top += side)
    for (int left = 0; left < columns; left += side) {
      const int right = left + side < columns ? left + side : columns, bottom = top + side < rows ? top + side : rows;
      int n = 0;
      for (int row = top; row < bottom; row++)
        for (int column = left; column < right; column++) {
          xs[n] = (column + 0.5) / columns * width;
          ys[n++] = (rows - row - 0.5) / rows * depth;
        }
      follow(figures, waves, moves, ground, n, blocks);
      n = 0;
      for (int row = top; row < bottom; row++)
        for (int column = left; column < right; column++) out[row * columns + column] = found[n++];
    }
  clock_gettime(CLOCK_MONOTONIC, &to);
  printf("%.6f\n", to.tv_sec - from.tv_sec + (to.tv_nsec - from.tv_nsec) * 1e-9);
  fwrite(out, 1, (size_t)columns * rows, stdout);
  return 0;
}

/*
 * The sweep of core/film/map-sweep.ts in C, cell for cell the same scheme: lines eliminated from both ends, backward Euler with the
 * face mobility of the film at the start of the step. A rectangle with all edges wetted and free, so every line is whole.
 * Usage: film-map <columns> <rows> <width_m> <depth_m> <film_m> <theta> <growth>; prints steps, seconds, share lost.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double solve_line(double *restrict h, long first, long n, long step, double k, double *restrict give,
                         double *restrict rest, double *lost_a, double *lost_b) {
  const long last = first + (n - 1) * step;
  const long middle = n >> 1, rights = n - 1 - middle;
  double a = h[first], b = h[last], aa = a * a, bb = b * b;
  const double sink_a = 2 * k * a * aa, sink_b = 2 * k * b * bb;
  double keeps = 1 + sink_a, keeps_r = 1 + sink_b, rhs = a, rhs_r = b;
  long p = first, q = last;
  for (long i = 0; i < rights; i++) {
    p += step;
    q -= step;
    const double na = h[p], nb = h[q], naa = na * na, nbb = nb * nb;
    const double m = k * (a + na) * (aa + naa), mr = k * (b + nb) * (bb + nbb);
    const double inv = 1 / (keeps + m), inv_r = 1 / (keeps_r + mr);
    const double r = rhs * inv, rr = rhs_r * inv_r;
    give[i] = m * inv;
    rest[i] = r;
    give[n - 1 - i] = mr * inv_r;
    rest[n - 1 - i] = rr;
    keeps = 1 + m * keeps * inv;
    keeps_r = 1 + mr * keeps_r * inv_r;
    rhs = na + m * r;
    rhs_r = nb + mr * rr;
    a = na;
    b = nb;
    aa = naa;
    bb = nbb;
  }
  double film;
  if (middle > rights) {
    p += step;
    const double m = k * (a + b) * (aa + bb), inv = 1 / (keeps + m);
    give[middle - 1] = m * inv;
    const double r = rhs * inv;
    rest[middle - 1] = r;
    keeps = 1 + m * keeps * inv;
    film = (m * r + rhs_r) / (keeps + keeps_r - 1);
  } else {
    film = (rhs + rhs_r - a) / (keeps + keeps_r - 1);
  }
  h[p] = film;
  q = p;
  a = b = film;
  for (long i = 1; i <= rights; i++) {
    p -= step;
    q += step;
    a = rest[middle - i] + give[middle - i] * a;
    b = rest[middle + i] + give[middle + i] * b;
    h[p] = a;
    h[q] = b;
  }
  if (middle > rights) h[p - step] = rest[0] + give[0] * a;
  *lost_a += sink_a * h[first];
  *lost_b += sink_b * h[last];
  return film;
}

int main(int count, char **words) {
  if (count != 8) {
    fputs("film-map <columns> <rows> <width_m> <depth_m> <film_m> <theta> <growth>\n", stderr);
    return 2;
  }
  const long nx = atol(words[1]), ny = atol(words[2]);
  const double width = atof(words[3]), depth = atof(words[4]), film = atof(words[5]), stop = atof(words[6]), growth = atof(words[7]);
  const long stride = 8 * (((nx + 7) / 8) | 1);
  const double dx = width / nx, dy = depth / ny, c = 1100 * 9.80665 / 3;
  const double small = dx < dy ? dx : dy;
  double *h = calloc(stride * ny, sizeof *h), *give = calloc(nx + ny, sizeof *give), *rest = calloc(nx + ny, sizeof *rest);
  double *lost = calloc(2 * (nx + ny), sizeof *lost);
  for (long j = 0; j < ny; j++)
    for (long i = 0; i < nx; i++) h[j * stride + i] = film;
  struct timespec from, to;
  clock_gettime(CLOCK_MONOTONIC, &from);
  const double first = small * small / (2 * c * film * film * film);
  double theta = 0;
  long steps = 0;
  while (theta < stop) {
    double by = first > growth * theta ? first : growth * theta;
    if (by >= stop - theta) by = stop - theta;
    const double kx = c * by / (4 * dx * dx), ky = c * by / (4 * dy * dy);
    for (int turn = 0; turn < 2; turn++) {
      if ((steps + turn) % 2 == 0)
        for (long j = 0; j < ny; j++) solve_line(h, j * stride, nx, 1, kx, give, rest, lost + 2 * j, lost + 2 * j + 1);
      else
        for (long i = 0; i < nx; i++) solve_line(h, i, ny, stride, ky, give, rest, lost + 2 * (ny + i), lost + 2 * (ny + i) + 1);
    }
    theta = by == stop - theta ? stop : theta + by;
    steps++;
  }
  clock_gettime(CLOCK_MONOTONIC, &to);
  double gone = 0;
  for (long f = 0; f < 2 * (nx + ny); f++) gone += lost[f];
  printf("{\"steps\": %ld, \"seconds\": %.6f, \"lost\": %.15g, \"middle\": %.15g}\n", steps,
         (to.tv_sec - from.tv_sec) + 1e-9 * (to.tv_nsec - from.tv_nsec), gone / (film * nx * ny), h[(ny / 2) * stride + nx / 2]);
  return 0;
}

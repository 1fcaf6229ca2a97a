/*
 * The sweep of core/film/map-sweep.ts in C, cell for cell the same scheme: lines eliminated from both ends, backward Euler with the
 * face mobility of the film at the start of the step. A rectangle with all edges wetted and free, so every line is whole; `lines` takes one
 * line at a time, `pairs` two, as the app does. Even counts of rows and columns.
 * Usage: film-map <lines|pairs> <columns> <rows> <width_m> <depth_m> <film_m> <theta> <growth>; prints steps, seconds, share lost.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double pow3(double x) { return x * x * x; }

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

/* Two equal lines, the second `apart` after the first, as solvePair in core/film/map-line.ts does them. */
static void solve_pair(double *restrict h, long first, long apart, long n, long step, double k, double sA1, double sB1, double sA2, double sB2, double *restrict give, double *restrict rest, double *restrict give2, double *restrict rest2) {
  
  const long last = first + (n - 1) * step;
  const long middle = n >> 1;
  const long rights = n - 1 - middle;
  long p = first, q = last;
  double a1 = h[p], a2 = h[p + apart], b1 = h[q], b2 = h[q + apart];
  double ra1 = a1, ra2 = a2, rb1 = b1, rb2 = b2;
  double ka1 = 1 + sA1, ka2 = 1 + sA2, kb1 = 1 + sB1, kb2 = 1 + sB2;
  for (long i = 0, j = n - 1; i < rights; i++, j--) {
    p += step; q -= step;
    const double na1 = h[p], na2 = h[p + apart], nb1 = h[q], nb2 = h[q + apart];
    const double ma1 = k * (a1 + na1) * (a1 * a1 + na1 * na1);
    const double ma2 = k * (a2 + na2) * (a2 * a2 + na2 * na2);
    const double mb1 = k * (b1 + nb1) * (b1 * b1 + nb1 * nb1);
    const double mb2 = k * (b2 + nb2) * (b2 * b2 + nb2 * nb2);
    const double ia1 = 1 / (ka1 + ma1), ia2 = 1 / (ka2 + ma2), ib1 = 1 / (kb1 + mb1), ib2 = 1 / (kb2 + mb2);
    ra1 *= ia1; rest[i] = ra1; const double ga1 = ma1 * ia1; give[i] = ga1; ka1 = 1 + ga1 * ka1; ra1 = na1 + ma1 * ra1; a1 = na1;
    ra2 *= ia2; rest2[i] = ra2; const double ga2 = ma2 * ia2; give2[i] = ga2; ka2 = 1 + ga2 * ka2; ra2 = na2 + ma2 * ra2; a2 = na2;
    rb1 *= ib1; rest[j] = rb1; const double gb1 = mb1 * ib1; give[j] = gb1; kb1 = 1 + gb1 * kb1; rb1 = nb1 + mb1 * rb1; b1 = nb1;
    rb2 *= ib2; rest2[j] = rb2; const double gb2 = mb2 * ib2; give2[j] = gb2; kb2 = 1 + gb2 * kb2; rb2 = nb2 + mb2 * rb2; b2 = nb2;
  }
  double f1, f2;
  if (middle > rights) {
    p += step;
    const double m1 = k * (a1 + b1) * (a1 * a1 + b1 * b1), m2 = k * (a2 + b2) * (a2 * a2 + b2 * b2);
    const double i1 = 1 / (ka1 + m1), i2 = 1 / (ka2 + m2);
    give[middle - 1] = m1 * i1; give2[middle - 1] = m2 * i2;
    ra1 *= i1; ra2 *= i2; rest[middle - 1] = ra1; rest2[middle - 1] = ra2;
    f1 = (m1 * ra1 + rb1) / (m1 * ka1 * i1 + kb1);
    f2 = (m2 * ra2 + rb2) / (m2 * ka2 * i2 + kb2);
  } else { f1 = (ra1 + rb1 - a1) / (ka1 + kb1 - 1); f2 = (ra2 + rb2 - a2) / (ka2 + kb2 - 1); }
  h[p] = f1; h[p + apart] = f2;
  q = p; a1 = f1; b1 = f1; a2 = f2; b2 = f2;
  long l = middle, r = middle;
  for (long i = 0; i < rights; i++) {
    p -= step; q += step; l--; r++;
    a1 = rest[l] + give[l] * a1; a2 = rest2[l] + give2[l] * a2;
    b1 = rest[r] + give[r] * b1; b2 = rest2[r] + give2[r] * b2;
    h[p] = a1; h[p + apart] = a2; h[q] = b1; h[q + apart] = b2;
  }
  if (middle > rights) { h[first] = rest[0] + give[0] * a1; h[first + apart] = rest2[0] + give2[0] * a2; }
}

/* Both lines of a pair with their free ends; adds what they lose. */
static double pair(double *restrict h, long first, long apart, long n, long step, double k, double *restrict store, long longest) {
  const long end = first + (n - 1) * step;
  const double a = 2 * k * pow3(h[first]), b = 2 * k * pow3(h[end]), c = 2 * k * pow3(h[first + apart]), d = 2 * k * pow3(h[end + apart]);
  solve_pair(h, first, apart, n, step, k, a, b, c, d, store, store + longest, store + 2 * longest, store + 3 * longest);
  return a * h[first] + b * h[end] + c * h[first + apart] + d * h[end + apart];
}

int main(int count, char **words) {
  if (count != 9) {
    fputs("film-map <lines|pairs> <columns> <rows> <width_m> <depth_m> <film_m> <theta> <growth>\n", stderr);
    return 2;
  }
  const int pairs = words[1][0] == 'p';
  const long nx = atol(words[2]), ny = atol(words[3]);
  const double width = atof(words[4]), depth = atof(words[5]), film = atof(words[6]), stop = atof(words[7]), growth = atof(words[8]);
  const long stride = 8 * (((nx + 7) / 8) | 1);
  const double dx = width / nx, dy = depth / ny, c = 1100 * 9.80665 / 3;
  const double small = dx < dy ? dx : dy;
  double *h = calloc(stride * ny, sizeof *h), *give = calloc(nx + ny, sizeof *give), *rest = calloc(nx + ny, sizeof *rest);
  double *lost = calloc(2 * (nx + ny), sizeof *lost), *store = calloc(4 * (nx + ny), sizeof *store);
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
      if ((steps + turn) % 2 == 0) {
        if (pairs)
          for (long j = 0; j < ny; j += 2) lost[j] += pair(h, j * stride, stride, nx, 1, kx, store, nx + ny);
        else
          for (long j = 0; j < ny; j++) solve_line(h, j * stride, nx, 1, kx, give, rest, lost + 2 * j, lost + 2 * j + 1);
      } else {
        if (pairs)
          for (long i = 0; i < nx; i += 2) lost[i] += pair(h, i, 1, ny, stride, ky, store, nx + ny);
        else
          for (long i = 0; i < nx; i++)
            solve_line(h, i, ny, stride, ky, give, rest, lost + 2 * (ny + i), lost + 2 * (ny + i) + 1);
      }
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

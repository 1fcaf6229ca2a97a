/*
 * The equations of core/numeric/column.ts with the resin's reaction, in C. A chain of nodes j = 0..nodes-1, of which the first
 * `reacting` carry a conversion a_j:
 *
 *   C_j dT_j/dt = G_(j-1) (T_(j-1) - T_j) + G_j (T_(j+1) - T_j) + q_j f(a_j, T_j)
 *                 - [j = 0] loss(T_0 - T_air) - [j = nodes-1] last_loss (T_j - T_air)
 *       da_j/dt = f(a_j, T_j) = exp(ln_front - e/T) (1 + a/rho) (1 - a)^n / (1 + exp((Tg(a) - T - offset)/width))
 *         Tg(a) = tg_start + tg_span lambda a/(1 - (1 - lambda) a)                                      (DiBenedetto)
 *      eta(a,T) = exp(ln_eta + e_eta/T) (ag/(ag - a))^(A + B a)                                         (Castro and Macosko)
 *
 * loss() is a cubic Hermite table, odd in its argument and straight past its last point. The state is laid out
 * a_0 T_0 a_1 T_1 ... T_(nodes-1), so that its Jacobian has two bands either side.
 */
#ifndef COLUMN_H
#define COLUMN_H
#include <math.h>

#define MAX_NODES 64
#define MAX_POINTS 64
#define MAX_EVENTS 32

enum event_kind { WARMED_TO, CONVERTED_TO, HARDENED_BY, THICKENED_BY, MEAN_PEAK };

typedef struct {
  int nodes, reacting, points, events;
  double capacity[MAX_NODES], conductance[MAX_NODES], heat[MAX_NODES];
  double excess[MAX_POINTS], flow[MAX_POINTS], slope[MAX_POINTS];
  double last_loss, air, end, start[2 * MAX_NODES];
  double ln_front, e, rho, order, tg_start, tg_span, lambda, offset, width;
  double ln_eta, e_eta, gel, eta_a, eta_b, fresh_eta;
  double kind[MAX_EVENTS], level[MAX_EVENTS];
} column;

static inline int at_a(int i) { return 2 * i; }
static inline int at_t(const column *c, int j) { return j < c->reacting ? 2 * j + 1 : c->reacting + j; }
static inline int size_of(const column *c) { return c->reacting + c->nodes; }

static inline double tg(const column *c, double a) {
  return c->tg_start + c->tg_span * c->lambda * a / (1 - (1 - c->lambda) * a);
}

static inline double rate(const column *c, double a, double t) {
  if (a >= 1) return 0;
  const double frozen = exp((tg(c, a) - t - c->offset) / c->width);
  return exp(c->ln_front - c->e / t) * (1 + a / c->rho) * pow(1 - a, c->order) / (1 + frozen);
}

/* f with df/da and df/dT. */
static inline double rate_slopes(const column *c, double a, double t, double *by_a, double *by_t) {
  const double f = rate(c, a, t);
  if (f == 0) return *by_a = *by_t = 0;
  const double room = 1 - (1 - c->lambda) * a;
  const double stuck = 1 / (c->width * (1 + exp(-(tg(c, a) - t - c->offset) / c->width)));
  *by_a = f * (1 / (c->rho + a) - c->order / (1 - a) - stuck * c->tg_span * c->lambda / (room * room));
  *by_t = f * (c->e / (t * t) + stuck);
  return f;
}

static inline double loss(const column *c, double excess) {
  const double size = fabs(excess), sign = excess < 0 ? -1 : 1;
  const int last = c->points - 1;
  if (!(size < c->excess[last])) return sign * (c->flow[last] + c->slope[last] * (size - c->excess[last]));
  int i = 0;
  while (size > c->excess[i + 1]) i++;
  const double h = c->excess[i + 1] - c->excess[i], s = size - c->excess[i], u = s / h, v = 1 - u;
  return sign * (v * v * ((1 + 2 * u) * c->flow[i] + s * c->slope[i]) +
                 u * u * ((1 + 2 * v) * c->flow[i + 1] - (h - s) * c->slope[i + 1]));
}

static inline double loss_slope(const column *c, double excess) {
  const double size = fabs(excess);
  const int last = c->points - 1;
  if (!(size < c->excess[last])) return c->slope[last];
  int i = 0;
  while (size > c->excess[i + 1]) i++;
  const double h = c->excess[i + 1] - c->excess[i], u = (size - c->excess[i]) / h, v = 1 - u;
  return 6 * u * v * (c->flow[i + 1] - c->flow[i]) / h + v * (1 - 3 * u) * c->slope[i] +
         u * (3 * u - 2) * c->slope[i + 1];
}

static inline void slopes(const column *c, const double *y, double *dy) {
  double incoming = -loss(c, y[at_t(c, 0)] - c->air);
  for (int j = 0; j < c->nodes; j++) {
    const double t = y[at_t(c, j)];
    const double outgoing = j + 1 < c->nodes ? c->conductance[j] * (t - y[at_t(c, j + 1)]) : c->last_loss * (t - c->air);
    double power = incoming - outgoing;
    if (j < c->reacting) power += c->heat[j] * (dy[at_a(j)] = rate(c, y[at_a(j)], t));
    dy[at_t(c, j)] = power / c->capacity[j];
    incoming = outgoing;
  }
}

/* Writes every non-zero of the Jacobian through put(row, column, value). */
#define JACOBIAN(c, y, put)                                                                                  \
  for (int j = 0; j < (c)->nodes; j++) {                                                                     \
    const int row = at_t(c, j);                                                                              \
    double own = j > 0 ? (c)->conductance[j - 1] : loss_slope(c, (y)[row] - (c)->air);                       \
    own += j + 1 < (c)->nodes ? (c)->conductance[j] : (c)->last_loss;                                        \
    double by_a, by_t, diagonal = -own / (c)->capacity[j];                                                   \
    if (j < (c)->reacting) {                                                                                 \
      rate_slopes(c, (y)[at_a(j)], (y)[row], &by_a, &by_t);                                                  \
      put(at_a(j), at_a(j), by_a);                                                                           \
      put(at_a(j), row, by_t);                                                                               \
      put(row, at_a(j), (c)->heat[j] / (c)->capacity[j] * by_a);                                             \
      diagonal += (c)->heat[j] / (c)->capacity[j] * by_t;                                                    \
    }                                                                                                        \
    put(row, row, diagonal);                                                                                 \
    if (j > 0) put(row, at_t(c, j - 1), (c)->conductance[j - 1] / (c)->capacity[j]);                         \
    if (j + 1 < (c)->nodes) put(row, at_t(c, j + 1), (c)->conductance[j] / (c)->capacity[j]);                \
  }

/* Each event is a quantity of the depth-mean state that rises through 0. */
static inline void events(const column *c, const double *y, double *out) {
  double a = 0, t = 0;
  for (int i = 0; i < c->reacting; i++) {
    a += y[at_a(i)] / c->reacting;
    t += y[at_t(c, i)] / c->reacting;
  }
  const double fluidity =
      a >= c->gel ? 0 : exp(-c->ln_eta - c->e_eta / t - (c->eta_a + c->eta_b * a) * log(c->gel / (c->gel - a)));
  for (int k = 0; k < c->events; k++) {
    switch ((enum event_kind)c->kind[k]) {
      case WARMED_TO: out[k] = t - c->level[k]; break;
      case CONVERTED_TO: out[k] = a - c->level[k]; break;
      case HARDENED_BY: out[k] = tg(c, a) - t - c->level[k]; break;
      case THICKENED_BY: out[k] = 1 / c->level[k] - c->fresh_eta * fluidity; break;
      case MEAN_PEAK: {
        double dy[2 * MAX_NODES];
        slopes(c, y, dy);
        out[k] = 0;
        for (int i = 0; i < c->reacting; i++) out[k] -= dy[at_t(c, i)];
      }
    }
  }
}
#endif

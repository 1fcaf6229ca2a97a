/*
 * The forward forecast with SUNDIALS CVODE: BDF, Newton with the exact Jacobian, banded (film) or dense (cup) direct solver, its
 * own root finding for the stages. Memory is made once and the solver re-initialised for every repeat, which is CVODE at its best.
 *
 * stdin: two columns, cup then film, each as lines "name count values..." in the order of read_column below.
 * argv: repeats, then relative tolerances, loosest first. For a tolerance r the error weights are those of our integrator:
 * conversions r |a| + r/10, temperatures 100 r (K).
 * stdout: one JSON line per tolerance: CPU seconds a forecast (mean of the repeats), steps, event times and the final mean state.
 */
#include "column.h"
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_version.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_band.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <time.h>

#define BANDS 2

typedef struct {
  column column;
  double relative;
  void *memory;
  N_Vector y;
  SUNMatrix matrix;
  SUNLinearSolver linear;
  double reached[MAX_EVENTS];
  long steps;
} body;

static void must(int ok, const char *what) {
  if (ok) return;
  fprintf(stderr, "cvode: %s failed\n", what);
  exit(1);
}

static int read_numbers(const char *name, double *into, int most) {
  char found[64];
  int count;
  must(scanf("%63s %d", found, &count) == 2 && strcmp(found, name) == 0 && count <= most, name);
  for (int i = 0; i < count; i++) must(scanf("%lf", &into[i]) == 1, name);
  return count;
}

static void read_column(column *c) {
  c->nodes = read_numbers("capacity", c->capacity, MAX_NODES);
  read_numbers("conductance", c->conductance, MAX_NODES);
  c->reacting = read_numbers("heat", c->heat, MAX_NODES);
  c->points = read_numbers("excess", c->excess, MAX_POINTS);
  read_numbers("flow", c->flow, MAX_POINTS);
  read_numbers("slope", c->slope, MAX_POINTS);
  double s[3], k[9], v[6];
  read_numbers("surroundings", s, 3);
  c->last_loss = s[0], c->air = s[1], c->end = s[2];
  read_numbers("kinetics", k, 9);
  c->ln_front = k[0], c->e = k[1], c->rho = k[2], c->order = k[3], c->tg_start = k[4], c->tg_span = k[5];
  c->lambda = k[6], c->offset = k[7], c->width = k[8];
  read_numbers("viscosity", v, 6);
  c->ln_eta = v[0], c->e_eta = v[1], c->gel = v[2], c->eta_a = v[3], c->eta_b = v[4], c->fresh_eta = v[5];
  read_numbers("start", c->start, 2 * MAX_NODES);
  c->events = read_numbers("kind", c->kind, MAX_EVENTS);
  read_numbers("level", c->level, MAX_EVENTS);
}

static int right_side(realtype t, N_Vector y, N_Vector dy, void *data) {
  (void)t;
  slopes(&((body *)data)->column, N_VGetArrayPointer(y), N_VGetArrayPointer(dy));
  return 0;
}

static int jacobian(realtype t, N_Vector y, N_Vector fy, SUNMatrix J, void *data, N_Vector v1, N_Vector v2, N_Vector v3) {
  (void)t, (void)fy, (void)v1, (void)v2, (void)v3;
  const column *c = &((body *)data)->column;
  const double *state = N_VGetArrayPointer(y);
#define PUT_BAND(i, k, value) SM_ELEMENT_B(J, i, k) = (value)
#define PUT_DENSE(i, k, value) SM_ELEMENT_D(J, i, k) = (value)
  if (c->nodes > 1) {
    JACOBIAN(c, state, PUT_BAND)
  } else {
    JACOBIAN(c, state, PUT_DENSE)
  }
  return 0;
}

static int weights(N_Vector y, N_Vector w, void *data) {
  const body *b = data;
  const double *state = N_VGetArrayPointer(y);
  double *weight = N_VGetArrayPointer(w);
  for (int j = 0; j < b->column.nodes; j++) weight[at_t(&b->column, j)] = 1 / (100 * b->relative);
  for (int i = 0; i < b->column.reacting; i++)
    weight[at_a(i)] = 1 / (b->relative * (fabs(state[at_a(i)]) + 0.1));
  return 0;
}

static int roots(realtype t, N_Vector y, realtype *out, void *data) {
  (void)t;
  events(&((body *)data)->column, N_VGetArrayPointer(y), out);
  return 0;
}

static void prepare(body *b, SUNContext context) {
  const column *c = &b->column;
  const int n = size_of(c);
  b->y = N_VNew_Serial(n, context);
  memcpy(N_VGetArrayPointer(b->y), c->start, n * sizeof(double));
  b->memory = CVodeCreate(CV_BDF, context);
  must(b->memory != NULL && CVodeInit(b->memory, right_side, 0, b->y) == CV_SUCCESS, "CVodeInit");
  b->matrix = c->nodes > 1 ? SUNBandMatrix(n, BANDS, BANDS, context) : SUNDenseMatrix(n, n, context);
  b->linear = c->nodes > 1 ? SUNLinSol_Band(b->y, b->matrix, context) : SUNLinSol_Dense(b->y, b->matrix, context);
  int rising[MAX_EVENTS];
  for (int k = 0; k < c->events; k++) rising[k] = 1;
  must(CVodeSetUserData(b->memory, b) == CV_SUCCESS && CVodeWFtolerances(b->memory, weights) == CV_SUCCESS &&
           CVodeSetLinearSolver(b->memory, b->linear, b->matrix) == CV_SUCCESS &&
           CVodeSetJacFn(b->memory, jacobian) == CV_SUCCESS && CVodeSetMaxNumSteps(b->memory, 10000000) == CV_SUCCESS &&
           CVodeRootInit(b->memory, c->events, roots) == CV_SUCCESS &&
           CVodeSetRootDirection(b->memory, rising) == CV_SUCCESS && CVodeSetNoInactiveRootWarn(b->memory) == CV_SUCCESS,
       "set-up");
}

static void cure(body *b) {
  const column *c = &b->column;
  memcpy(N_VGetArrayPointer(b->y), c->start, size_of(c) * sizeof(double));
  must(CVodeReInit(b->memory, 0, b->y) == CV_SUCCESS && CVodeSetStopTime(b->memory, c->end) == CV_SUCCESS, "CVodeReInit");
  for (int k = 0; k < c->events; k++) b->reached[k] = NAN;
  realtype t = 0;
  int flag;
  while ((flag = CVode(b->memory, c->end, b->y, &t, CV_NORMAL)) == CV_ROOT_RETURN) {
    int found[MAX_EVENTS];
    CVodeGetRootInfo(b->memory, found);
    for (int k = 0; k < c->events; k++)
      if (found[k] > 0 && isnan(b->reached[k])) b->reached[k] = t;
  }
  must(flag == CV_SUCCESS || flag == CV_TSTOP_RETURN, "CVode");
  CVodeGetNumSteps(b->memory, &b->steps);
}

static double cpu_s(void) {
  struct timespec now;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return now.tv_sec + 1e-9 * now.tv_nsec;
}

static void print_body(const char *name, const body *b) {
  const column *c = &b->column;
  const double *y = N_VGetArrayPointer(b->y);
  double a = 0, t = 0;
  for (int i = 0; i < c->reacting; i++) a += y[at_a(i)] / c->reacting, t += y[at_t(c, i)] / c->reacting;
  printf(",\"%s\":{\"steps\":%ld,\"conversion\":%.17g,\"temperature_K\":%.17g,\"reached\":[", name, b->steps, a, t);
  for (int k = 0; k < c->events; k++) {
    if (k > 0) putchar(',');
    if (isnan(b->reached[k])) printf("null");
    else printf("%.17g", b->reached[k]);
  }
  printf("]}");
}

int main(int argc, char **argv) {
  char version[32];
  if (argc == 2 && strcmp(argv[1], "--version") == 0 && SUNDIALSGetVersion(version, sizeof version) == 0) return puts(version) < 0;
  must(argc > 2, "usage: cvode <repeats> <tolerance>...; arguments");
  SUNContext context;
  must(SUNContext_Create(NULL, &context) == 0, "SUNContext_Create");
  static body cup, film;
  read_column(&cup.column);
  read_column(&film.column);
  prepare(&cup, context);
  prepare(&film, context);
  const int repeats = atoi(argv[1]);
  for (int i = 2; i < argc; i++) {
    cup.relative = film.relative = atof(argv[i]);
    cure(&cup);
    cure(&film);
    const double start = cpu_s();
    for (int k = 0; k < repeats; k++) {
      cure(&cup);
      cure(&film);
    }
    printf("{\"tolerance\":%s,\"cpu_s\":%.9g", argv[i], (cpu_s() - start) / repeats);
    print_body("cup", &cup);
    print_body("film", &film);
    printf("}\n");
  }
  for (body *b = &cup; b != NULL; b = b == &cup ? &film : NULL) {
    CVodeFree(&b->memory);
    SUNLinSolFree(b->linear);
    SUNMatDestroy(b->matrix);
    N_VDestroy(b->y);
  }
  SUNContext_Free(&context);
  return 0;
}

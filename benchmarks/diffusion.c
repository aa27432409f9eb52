/* The scheme of packages/engine/src/numeric/kernel/diffusion.as in C, on a memory laid out like the engine's:
   reads that memory from a file, runs steps, prints seconds for each sweep over the cells and a sum of the result.
   With "triad MB" it measures the machine's bandwidth instead. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { CELLS, ROW, PLANE, LAST_SEGMENT, NOW, RATE, WORK_A, WORK_B, NEXT_RATE, POTENTIAL, ACROSS, BELOW, ALONG,
       INVERSE_VOLUME, PEAK, POTENTIAL_TABLE, LOSS_TABLE, EXPOSED_CELL, EXPOSED_AREA, EXPOSED_HALF, EXPOSED_COUNT,
       SOURCE_CELL, SOURCE_POWER, SOURCE_COUNT, STAGES };

static char *memory;
static int32_t *header;
static double *scalars;

static double *doubles(int place) { return (double *)(memory + header[place]); }
static int32_t *integers(int place) { return (int32_t *)(memory + header[place]); }

static double seconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  return now.tv_sec + 1e-9 * now.tv_nsec;
}

static int segment_of(double place) {
  int last = header[LAST_SEGMENT];
  return place > 0 ? (place < last ? (int)place : last) : 0;
}

static void look_up(const double *restrict state) {
  double *restrict potential = doubles(POTENTIAL);
  const double *restrict table = doubles(POTENTIAL_TABLE);
  const double start = scalars[0], per_unit = scalars[1];
  const int cells = header[CELLS], last = header[LAST_SEGMENT];
  for (int i = 0; i < cells; i++) {
    const double place = (state[i] - start) * per_unit;
    int segment = (int)place;
    segment = segment < 0 ? 0 : segment > last ? last : segment;
    potential[i] = table[2 * segment] + table[2 * segment + 1] * place;
  }
}

static double scatter(const double *state, double *to, double factor) {
  const double *volume = doubles(INVERSE_VOLUME), *area = doubles(EXPOSED_AREA), *half = doubles(EXPOSED_HALF);
  const double *table = doubles(LOSS_TABLE), *power = doubles(SOURCE_POWER);
  const int32_t *cell = integers(EXPOSED_CELL), *source = integers(SOURCE_CELL);
  double rate = 0;
  for (int k = 0; k < header[SOURCE_COUNT]; k++) to[source[k]] += factor * (power[k] * volume[source[k]]);
  for (int k = 0; k < header[EXPOSED_COUNT]; k++) {
    const int i = cell[k];
    const double place = (state[i] - scalars[0]) * scalars[1];
    const double *entry = table + 4 * segment_of(place);
    const double lost = area[k] * ((entry[0] + entry[1] * place) / (1 + half[k] * (entry[2] + entry[3] * place)));
    rate += lost;
    to[i] -= factor * (lost * volume[i]);
  }
  return rate;
}

#define INFLOW(i) \
  ((gx[i] * (p[i + 1] - p[i]) - gx[i - 1] * (p[i] - p[i - 1]) + (gy[i] * (p[i + row] - p[i]) - gy[i - row] * (p[i] - p[i - row]))) * volume[i])
#define INFLOW3(i) \
  ((gx[i] * (p[i + 1] - p[i]) - gx[i - 1] * (p[i] - p[i - 1]) + (gy[i] * (p[i + row] - p[i]) - gy[i - row] * (p[i] - p[i - row])) + \
    (gz[i] * (p[i + plane] - p[i]) - gz[i - plane] * (p[i] - p[i - plane]))) * volume[i])

static double stage(const double *last, const double *before, double *to, const double *c) {
  look_up(last);
  const double *restrict p = doubles(POTENTIAL), *restrict gx = doubles(ACROSS), *restrict gy = doubles(BELOW);
  const double *restrict gz = doubles(ALONG), *restrict volume = doubles(INVERSE_VOLUME);
  const double *restrict now = doubles(NOW), *restrict rate = doubles(RATE);
  const int cells = header[CELLS], row = header[ROW], plane = header[PLANE];
  const double c0 = c[0], c1 = c[1], c2 = c[2], cf = c[3], cg = c[4];
  if (plane == 0) {
#pragma GCC ivdep
    for (int i = 0; i < cells; i++) to[i] = c0 * now[i] + cg * rate[i] + (c1 * last[i] + c2 * before[i]) + cf * INFLOW(i);
  } else {
#pragma GCC ivdep
    for (int i = 0; i < cells; i++) to[i] = c0 * now[i] + cg * rate[i] + (c1 * last[i] + c2 * before[i]) + cf * INFLOW3(i);
  }
  return scatter(last, to, cf);
}

/* The stages of one step; like the engine's `attempt` it ends with rates and error, here counted as one more sweep. */
static const double *attempt(int stages) {
  double *a = doubles(WORK_A), *b = doubles(WORK_B);
  const double *now = doubles(NOW), *rate = doubles(RATE), *c = doubles(STAGES);
  const int cells = header[CELLS];
  for (int i = 0; i < cells; i++) a[i] = now[i] + c[4] * rate[i];
  const double *before = now, *last = a;
  for (int j = 1; j < stages; j++) {
    double *to = j % 2 == 0 ? a : b;
    stage(last, before, to, c + 5 * j);
    before = last;
    last = to;
  }
  return last;
}

static int triad(size_t megabytes) {
  const size_t n = megabytes * 1024 * 1024 / 8;
  double *a = malloc(8 * n), *b = malloc(8 * n), *c = malloc(8 * n), best = 1e9;
  for (size_t i = 0; i < n; i++) a[i] = 0, b[i] = i, c[i] = 1;
  for (int round = 0; round < 8; round++) {
    const double start = seconds();
    for (size_t i = 0; i < n; i++) a[i] = b[i] + 3.0 * c[i];
    const double took = seconds() - start;
    if (took < best) best = took;
    b[round] = a[n - 1 - round];
  }
  printf("%.9g\n", 24.0 * n / best);
  return 0;
}

int main(int count, char **words) {
  if (count == 3 && strcmp(words[1], "triad") == 0) return triad(strtoul(words[2], NULL, 10));
  if (count != 4) return 2;
  FILE *file = fopen(words[1], "rb");
  if (file == NULL) return 2;
  fseek(file, 0, SEEK_END);
  const long bytes = ftell(file);
  rewind(file);
  memory = aligned_alloc(64, (bytes + 63) / 64 * 64);
  if (fread(memory, 1, bytes, file) != (size_t)bytes) return 2;
  header = (int32_t *)memory;
  scalars = (double *)(memory + 256);
  const int stages = atoi(words[2]), rounds = atoi(words[3]);
  double best = 1e9;
  const double *last = NULL;
  for (int round = 0; round < rounds; round++) {
    const double start = seconds();
    last = attempt(stages);
    const double took = (seconds() - start) / stages;
    if (took < best) best = took;
  }
  double sum = 0;
  for (int i = 0; i < header[CELLS]; i++) sum += last[i];
  printf("%.9g %.17g\n", best, sum);
  return 0;
}

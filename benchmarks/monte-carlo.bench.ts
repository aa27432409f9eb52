/**
 * Passes simulated per second by the planner's own function, against the bare arithmetic in typed arrays and in C.
 * The planner keeps what its candidates share (powers of the draws) from run to run; the bare loops work it out anew.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawShops, metalOf, publishedBelief, runPlan, type Setup } from '@furrow/engine';
import { machineLine, timed, unrestNote } from './timing.ts';

const SHOPS = 4000;
const LAYERS = 3;
const CALLS = 41;
const ENERGY = 0.2;
const DIAMETER = 12.7e-3;

const posterior = publishedBelief(metalOf('carbon_steel'), 'flat');
const draws = drawShops(posterior, SHOPS, 1);
const setup: Setup = {
  electrode: { diameter: DIAMETER, kind: 'jointed', length: 0.43, stub: 0, count: 10, price_each: 0 },
  current: 900,
  voltage: 42,
  angleTerm: 0,
  unitTravel: (42 * 900) / (DIAMETER ** 2 * posterior.meltingEnergy),
  pattern: { tracks: 1, spacing: 0 },
  layers: Array.from({ length: LAYERS }, () => ({ kind: 'set', logEnergy: ENERGY })),
};
const demand = { zoneWidth: 0, passLength: 1, readingSd: 0.4e-3 };

const noise = Array.from({ length: LAYERS }, (_, pass) => draws.passNoise(pass));
const deepest = new Float64Array(SHOPS);
const width = new Float64Array(SHOPS);
const SIN = Math.sin((3 * Math.PI) / 180);
const COS = Math.cos((3 * Math.PI) / 180);

/** The same arithmetic for one track, with nothing around it. */
function bareLoop(): void {
  const { level, slope, spread, laterFactor, extraWidth } = draws;
  for (let shop = 0; shop < SHOPS; shop += 1) {
    let depth = 0;
    for (let layer = 0; layer < LAYERS; layer += 1) {
      const factor = layer > 0 ? laterFactor[shop]! : 1;
      const lnDepth = level[shop]! + slope[shop]! * ENERGY + spread[shop]! * noise[layer]![shop]!;
      depth += factor * DIAMETER * Math.exp(lnDepth);
    }
    const radius = (DIAMETER + extraWidth[shop]!) / 2;
    const tangent = radius * (1 - SIN);
    deepest[shop] = depth;
    width[shop] =
      depth <= tangent
        ? 2 * Math.sqrt(Math.max(0, depth * (2 * radius - depth)))
        : 2 * (radius * COS + ((depth - tangent) * SIN) / COS);
  }
}

const SOURCE = `
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#define SHOPS ${SHOPS}
#define LAYERS ${LAYERS}
static double level[SHOPS], slope[SHOPS], spread[SHOPS], later[SHOPS], extra[SHOPS], noise[LAYERS][SHOPS];
static double deepest[SHOPS], width[SHOPS];
static double draw(void) { return rand() / (double)RAND_MAX * 2 - 1; }
static int rising(const void *a, const void *b) { double d = *(const double *)a - *(const double *)b; return d < 0 ? -1 : d > 0; }
int main(void) {
  for (int i = 0; i < SHOPS; i++) {
    level[i] = -0.85 + 0.1 * draw(); slope[i] = 1.4 + 0.1 * draw(); spread[i] = 0.28; later[i] = 1 + 0.1 * draw();
    extra[i] = 0.0035 + 0.001 * draw();
    for (int k = 0; k < LAYERS; k++) noise[k][i] = draw();
  }
  double times[${CALLS}], sum = 0;
  for (int run = 0; run < ${CALLS}; run++) {
    struct timespec a, b;
    clock_gettime(CLOCK_MONOTONIC, &a);
    for (int i = 0; i < SHOPS; i++) {
      double depth = 0;
      for (int k = 0; k < LAYERS; k++)
        depth += (k > 0 ? later[i] : 1) * ${DIAMETER} * exp(level[i] + slope[i] * ${ENERGY} + spread[i] * noise[k][i]);
      double radius = (${DIAMETER} + extra[i]) / 2, tangent = radius * (1 - ${SIN});
      deepest[i] = depth;
      width[i] = depth <= tangent ? 2 * sqrt(depth * (2 * radius - depth)) : 2 * (radius * ${COS} + (depth - tangent) * ${SIN / COS});
    }
    clock_gettime(CLOCK_MONOTONIC, &b);
    times[run] = (b.tv_sec - a.tv_sec) + (b.tv_nsec - a.tv_nsec) / 1e9;
    sum += deepest[run] + width[run];
  }
  qsort(times, ${CALLS}, sizeof(double), rising);
  printf("%.9g %.3f\\n", times[${Math.floor(CALLS / 2)}], sum);
  return 0;
}
`;

/** Median time of the loop in C [s]; undefined without a compiler. */
function inC(): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'furrow-bench-'));
  try {
    const [source, program] = [join(folder, 'loop.c'), join(folder, 'loop')];
    writeFileSync(source, SOURCE);
    if (
      spawnSync(process.env.CC ?? 'cc', ['-O2', '-o', program, source, '-lm'], { stdio: 'inherit' })
        .status !== 0
    ) {
      return undefined;
    }
    const { status, stdout } = spawnSync(program, { encoding: 'utf8' });
    return status === 0 ? Number.parseFloat(stdout) : undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(machineLine());
const planner = timed(CALLS, () => runPlan(setup, demand, draws));
const bare = timed(CALLS, bareLoop);
const came = runPlan(setup, demand, draws);
const apart = Math.max(...Array.from(came.deepest, (depth, shop) => Math.abs(depth - deepest[shop]!)));
if (apart > 1e-12)
  throw new Error(`The bare loop and the planner differ by ${apart} m: not the same arithmetic`);
const compiled = inC();
const passes = SHOPS * LAYERS;
const rate = (seconds: number): string => `${(passes / seconds / 1e6).toFixed(1)} million passes/s`;
console.log(`planner's runPlan:      ${rate(planner.median)}, what candidates share kept between runs`);
console.log(
  `plain typed arrays:     ${rate(bare.median)}: runPlan takes ${(planner.median / bare.median).toFixed(2)} times as long${unrestNote(planner, bare)}`,
);
console.log(
  compiled === undefined
    ? 'C loop: no C compiler here (cc), so this anchor is left out'
    : `the same loop in C -O2:  ${rate(compiled)}: runPlan takes ${(planner.median / compiled).toFixed(2)} times as long`,
);

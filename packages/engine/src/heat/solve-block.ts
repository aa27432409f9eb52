import { axisOf } from './axis.ts';
import type { BlockFace, BlockHeat, BlockHeatInput } from './block-heat.ts';
import { type CellShare, type HeatBody, type HeatGrid, heatBody } from './heat-body.ts';
import { type CellSource, laySources, storedHeat } from './heat-sources.ts';
import { disturb, march, marchTo } from './march.ts';
import { sectionCells } from './section-cells.ts';
import { enthalpyAt, temperatureAt } from './thermal-tables.ts';

/** Cells of a section that lie at its own edges, with their share in the face. */
function sectionFaces({ across, below }: HeatGrid, faces: readonly BlockFace[]): CellShare[] {
  const columns = across.widths.length;
  const rows = below.widths.length;
  const shares: CellShare[] = [];
  for (let j = 0; j < rows; j += 1) {
    const length = below.widths[j]!;
    if (faces.includes('left')) shares.push({ cell: j * columns, length, half: across.widths[0]! / 2 });
    if (faces.includes('right')) {
      shares.push({ cell: (j + 1) * columns - 1, length, half: across.widths[columns - 1]! / 2 });
    }
  }
  for (let i = 0; i < columns; i += 1) {
    const length = across.widths[i]!;
    if (faces.includes('top')) shares.push({ cell: i, length, half: below.widths[0]! / 2 });
    if (faces.includes('bottom')) {
      shares.push({ cell: (rows - 1) * columns + i, length, half: below.widths[rows - 1]! / 2 });
    }
  }
  return shares;
}

/** Flux so much smaller than the greatest is left out [-]. */
const FAINT = 1e-12;

/** Heat into each cell of the top face, from the flux at its middle. */
function topSources(
  { grid, plane }: HeatBody,
  flux: (across: number, along: number) => number,
): CellSource[] {
  const { across, along } = grid;
  const sources: CellSource[] = [];
  let most = 0;
  along.centres.forEach((z, place) => {
    across.centres.forEach((x, i) => {
      const here = flux(x, z);
      most = Math.max(most, Math.abs(here));
      if (Math.abs(here) <= FAINT * most) return;
      sources.push({ cell: place * plane + i, power: here * across.widths[i]! * along.widths[place]! });
    });
  });
  return sources;
}

/**
 * Temperatures in a block without a groove: the solver by itself, for checks and for comparison.
 *
 * The same grid, inner loop and steps as under a groove: enthalpy of each cell as unknown, seven-point fluxes of the
 * integral of k dT, Runge-Kutta-Chebyshev steps chosen by their error. Second order in the cells where properties are
 * smooth. One cell along makes it a section, one across and along a rod.
 *
 * @param input - metal, edges of the cells, start, losses and flux [record], edges in [m] increasing, times in [s] increasing
 * @returns a generator of the time reached, whose result is the block through time [record]
 * @source heat conduction with enthalpy: derived; Runge-Kutta-Chebyshev steps: Sommeijer, Shampine and Verwer (memory)
 * @example
 * Array.from(solveBlock({ metal: { start: 273.15, step: 1000, enthalpy: Float64Array.of(0, 4e9), conductivity: Float64Array.of(40, 40) }, across: [0, 0.01], below: [0, 1], along: [0, 1], start: () => 300, loss: null, times: [], tolerance: 1 })).length // => 0
 */
export function* solveBlock(input: BlockHeatInput): Generator<number, BlockHeat> {
  const { loss, flux, fluxHeld } = input;
  const grid = { across: axisOf(input.across), below: axisOf(input.below), along: axisOf(input.along) };
  const section = sectionCells(grid.across, grid.below, []);
  const columns = grid.across.widths.length;
  const body = heatBody({
    metal: input.metal,
    grid,
    start: input.start(grid.across.centres[0]!, grid.below.centres[0]!, grid.along.centres[0]!),
    loss,
    section,
    free: sectionFaces(grid, loss?.faces ?? []),
    ends: {
      front: loss?.faces.includes('front') ?? false,
      back: loss?.faces.includes('back') ?? false,
    },
    sourcesMost: columns * grid.along.widths.length,
    tolerance: input.tolerance,
    ...(input.form === undefined ? {} : { form: input.form }),
  });
  const { now } = body.kernel.memory;
  for (let cell = 0; cell < body.plane * grid.along.widths.length; cell += 1) {
    const inSection = cell % body.plane;
    const place = Math.floor(cell / body.plane);
    const row = Math.floor(inSection / columns);
    const start = input.start(
      grid.across.centres[inSection % columns]!,
      grid.below.centres[row]!,
      grid.along.centres[place]!,
    );
    now[cell] = enthalpyAt(body.tables, start);
  }
  const startHeat = storedHeat(body);
  const walk = march(body, 0);
  const temperatures: Float64Array[] = [];
  let given = 0;
  let heldUntil = 0;
  let power = 0;
  disturb(walk);
  for (const time of input.times) {
    while (walk.time < time) {
      if (flux !== undefined && walk.time >= heldUntil) {
        const held = fluxHeld ?? Number.POSITIVE_INFINITY;
        const middle = walk.time + (Number.isFinite(held) ? held / 2 : 0);
        heldUntil = walk.time + held;
        const sources = topSources(body, (across, along) => flux(across, along, middle));
        power = sources.reduce((sum, each) => sum + each.power, 0);
        laySources(body, sources);
        body.kernel.prepare();
      }
      const from = walk.time;
      const end = flux === undefined ? time : Math.min(time, heldUntil);
      yield* marchTo(walk, end);
      given += power * (walk.time - from);
    }
    temperatures.push(
      Float64Array.from(now.subarray(0, body.plane * grid.along.widths.length), (heat) =>
        temperatureAt(body.tables, heat),
      ),
    );
  }
  const stored = storedHeat(body) - startHeat;
  const scale = Math.max(given, Math.abs(walk.lost), Math.abs(stored), Math.abs(startHeat));
  const missing = Math.abs(given - walk.lost - stored);
  return {
    across: grid.across.centres,
    below: grid.below.centres,
    along: grid.along.centres,
    temperatures,
    balance: { given, cutOut: 0, lost: walk.lost, stored, error: scale > 0 ? missing / scale : 0 },
    steps: walk.steps,
    sweeps: walk.stages,
    form: body.kernel.form,
  };
}

/** Sections simulated per second: on a grid, as the drawing has them, and in closed form, as the planner counts. */
import {
  cutPass,
  drawShops,
  flatFloor,
  measureFloor,
  metalOf,
  publishedBelief,
  runPlan,
  type Setup,
} from '@furrow/engine';
import { machineLine, timed, unrestNote } from './timing.ts';

const WIDTH = 16e-3;
const CALLS = 31;
const SHOPS = 2000;
const posterior = publishedBelief(metalOf('carbon_steel'), 'flat');
const draws = drawShops(posterior, SHOPS, 1);

function gridSection(tracks: number): () => unknown {
  return () => {
    let floor = flatFloor((tracks * WIDTH) / 2 + 6e-3, 0.1e-3);
    for (let track = 0; track < tracks; track += 1) {
      floor = cutPass(floor, { offset: (track - (tracks - 1) / 2) * 10e-3, width: WIDTH, depth: 8e-3 });
    }
    return measureFloor(floor);
  };
}

function closedForm(tracks: number): () => unknown {
  const diameter = 12.7e-3;
  const setup: Setup = {
    electrode: { diameter, kind: 'jointed', length: 0.43, stub: 0, count: 10, price_each: 0 },
    current: 900,
    voltage: 42,
    angleTerm: 0,
    unitTravel: (42 * 900) / (diameter ** 2 * posterior.meltingEnergy),
    pattern: { tracks, spacing: tracks === 1 ? 0 : 10e-3 },
    layers: [{ kind: 'set', logEnergy: 0.2 }],
  };
  const demand = { zoneWidth: (tracks - 1) * 8e-3, passLength: 1, readingSd: 0.4e-3 };
  return () => runPlan(setup, demand, draws);
}

console.log(machineLine());
for (const tracks of [1, 4]) {
  const cut = gridSection(tracks);
  const grid = timed(CALLS, () => {
    for (let run = 0; run < 50; run += 1) cut();
  });
  const closed = timed(CALLS, closedForm(tracks));
  const perSecond = [50 / grid.median, SHOPS / closed.median] as const;
  console.log(
    `${tracks} track${tracks === 1 ? ' ' : 's'}: cut and measured on a 0.1 mm grid ${Math.round(perSecond[0])} sections/s, ` +
      `passes drawn and floor read in closed form ${Math.round(perSecond[1])} sections/s: ` +
      `${Math.round(perSecond[1] / perSecond[0])} times${unrestNote(grid, closed)}`,
  );
}

import { z } from 'zod';
import type { KitBay, PlaceOutcome, StockPiece } from '../kit/index.ts';
import type { Stated } from '../limit/index.ts';
import { amountOf, type Sentence, say, sentenceSchema } from '../quantity/index.ts';
import type { PickedRun, StationChoice } from '../supply/index.ts';

/** A point of the plan view. */
export const pointReportSchema = z
  .object({ x_m: z.number().describe('To the right [m].'), y_m: z.number().describe('Up the plan [m].') })
  .meta({ id: 'PointReport', description: 'A point of the plan view.' });

const areaReportSchema = z
  .object({ name: z.string().describe('Name, in words.'), outline_m: z.array(pointReportSchema) })
  .meta({ id: 'AreaReport', description: 'A closed area of the plan view.' });

const bayReportSchema = z
  .object({
    outline_m: z.array(pointReportSchema).describe('Corners of the bay, in order [m].'),
    obstacles: z.array(areaReportSchema),
    walkways: z.array(areaReportSchema),
    workpiece: areaReportSchema,
    seam_m: z.array(pointReportSchema).describe('The seam, from its start [m].'),
    posts: z.array(
      z.object({
        name: z.string().describe('Name, in words.'),
        kind: z.enum(['power', 'air', 'work clamp']),
        at_m: pointReportSchema,
      }),
    ),
    keep_out_m: z.number().describe('Distance that the station keeps from the seam [m].'),
  })
  .meta({ id: 'BayReport', description: 'What stands in the bay.' });

const routeReportSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    kind: z.enum(['electrode lead', 'work lead', 'air hose']),
    from: z.string().describe('Where it begins.'),
    to: z.string().describe('Where it ends.'),
    path_m: z.array(pointReportSchema).describe('Corners of its way [m].'),
    needed_m: z.number().describe('Length needed, slack included [m].'),
    picked_m: z.number().describe('Length of what is picked for it [m].'),
    pieces: z.array(z.string()).describe('Pieces put together, each by its number and its name in stock.'),
    joints: z.number().describe('Joints between the pieces one behind the other [-].'),
    cleats: z.number().describe('Cleats along the way [-].'),
    loss_W: z.number().describe('Power lost in it at the setting [W].'),
  })
  .meta({ id: 'RouteReport', description: 'One lead or hose as it is laid.' });

const pickReportSchema = z
  .object({
    name: z.string().describe('Name, in words.'),
    kind: z.enum(['hose', 'lead']),
    size: sentenceSchema.describe('Size of a lead, such as `95 mm2`; bore of a hose, such as `19 mm`.'),
    length_m: z.number().describe('Length of one [m].'),
    count: z.number().describe('How many [-].'),
  })
  .meta({ id: 'PickReport', description: 'Pieces of one kind in stock.' });

/** Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan. */
export const placeReportSchema = z
  .object({
    bay: bayReportSchema,
    station: z
      .object({
        at_m: pointReportSchema.describe('Its place [m].'),
        chosen: z
          .enum(['found', 'stated'])
          .describe('`found`: least loss of all places on the grid; `stated`: the kit says where.'),
        places_tried: z.number().describe('Places on the grid [-].'),
        places_judged: z.number().describe('Places judged one by one; a bound rules the others out [-].'),
        loss_W: z.number().describe('Power lost in the picked leads and hoses at the setting [W].'),
        reach_margin_m: z
          .number()
          .describe(
            'How much farther than every point of the seam the shorter of lead and hose would reach [m].',
          ),
      })
      .nullable(),
    least: z
      .object({ at_m: pointReportSchema, loss_W: z.number().describe('Power lost there [W].') })
      .nullable(),
    routes: z.array(routeReportSchema),
    picks: z.array(pickReportSchema),
    left: z.array(pickReportSchema).describe('What is left in stock after the picks.'),
    covers: z.number().describe('Covers that the walkways need [-].'),
    lead_clearance_m: z
      .number()
      .describe(
        'Distance that leads and hoses keep from the seam, but where they come to it at right angles [m].',
      ),
    jets_m: z
      .array(z.array(pointReportSchema))
      .describe(
        'Where the jet throws: one outline for each stretch and way, out of bounds for station and people [m].',
      ),
    cautions: z
      .array(z.string())
      .describe('What stands or lies where the jet throws, or beside the seam, in words.'),
    parallels: z.number().describe('Leads side by side in every run of leads, as in the leads laid now [-].'),
    says: sentenceSchema,
  })
  .meta({
    id: 'PlaceReport',
    description:
      "Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan.",
  });

/** A point of the plan view. */
export type PointReport = Stated<typeof pointReportSchema>;
/** A closed area of the plan view. */
export type AreaReport = Stated<typeof areaReportSchema>;
/** What stands in the bay. */
export type BayReport = Stated<typeof bayReportSchema>;
/** One lead or hose as it is laid. */
export type RouteReport = Stated<typeof routeReportSchema>;
/** Pieces of one kind in stock. */
export type PickReport = Stated<typeof pickReportSchema>;
/** Where everything stands in the bay, in metres from the bay's own origin, x to the right and y up the plan. */
export type PlaceReport = Stated<typeof placeReportSchema>;

/** A point of the plan view as results state it. */
export function statePoint({ x, y }: { readonly x: number; readonly y: number }): PointReport {
  return { x_m: x, y_m: y };
}

/**
 * States where everything stands in the bay, in metres from its own origin.
 *
 * @param outcome - the place [record], from `placeOfKit`
 * @returns bay, station, routes and picks with units in their keys [record]
 * @source none: bookkeeping
 * @example
 * const place = placeOfKit(demoKit.kit, { ...demoJob.job, site: { ...demoJob.job.site, bay: demoKit.kit.bay.name } }, { current_A: 600, leads: [{ parallels: 2, temperature_K: 320 }] }, { torchFlow: 0.01, regulator: 6e5 });
 * statePlace({ ...place, choice: undefined }).station // => null
 */
export function statePlace(outcome: PlaceOutcome): PlaceReport {
  const { bay, choice, parallels, least, stock } = outcome;
  const runs = choice?.runs ?? [];
  const laid = runs.flatMap(({ of, pieces }) =>
    pieces.map(({ id, count }) => ({ id, count: count * sideBySide(of, parallels) })),
  );
  return {
    bay: stateBay(bay),
    station:
      choice === undefined
        ? null
        : {
            at_m: statePoint(choice.station),
            chosen: outcome.chosen,
            places_tried: choice.places,
            places_judged: choice.places_judged,
            loss_W: choice.loss_W,
            reach_margin_m: choice.reach_margin_m,
          },
    lead_clearance_m: bay.lead_clearance,
    jets_m: outcome.jets.map((outline) => outline.map(statePoint)),
    parallels,
    least: least === undefined ? null : { at_m: statePoint(least.station), loss_W: least.loss_W },
    routes: runs.map((run) => stateRoute(run, parallels)),
    picks: stock.flatMap((kind) => {
      const count = laid.reduce((sum, { id, count: each }) => (id === kind.name ? sum + each : sum), 0);
      return count > 0 ? [statePick(kind, count)] : [];
    }),
    left: stock.map((kind) => statePick(kind, leftOf(kind, choice?.left, parallels))),
    covers: choice?.covers ?? 0,
    cautions: outcome.cautions,
    says: placeSays(outcome),
  };
}

function sideBySide(of: 'lead' | 'hose', parallels: number): number {
  return of === 'lead' ? parallels : 1;
}

/** What is left of a kind, leads one by one again: those that no bundle could be made of are among them. */
function leftOf(kind: StockPiece, left: StationChoice['left'] = [], parallels: number): number {
  const found = left.find(({ id }) => id === kind.name);
  if (found === undefined || kind.kind === 'hose') return found?.count ?? kind.count;
  return found.count * parallels + (kind.count % parallels);
}

function statePick(piece: StockPiece, count: number): PickReport {
  return {
    name: piece.name,
    kind: piece.kind,
    size: piece.kind === 'lead' ? piece.size : say`${amountOf(piece.bore, 'bore')}`,
    length_m: piece.length,
    count,
  };
}

function stateRoute(run: PickedRun, parallels: number): RouteReport {
  const [from, to] = run.run.split(' to ') as [string, string];
  const lead = run.run === 'source to work clamp' ? 'work lead' : 'electrode lead';
  return {
    name: run.run,
    kind: run.of === 'hose' ? 'air hose' : lead,
    from,
    to,
    path_m: run.way.map(statePoint),
    needed_m: run.needed_m,
    picked_m: run.length_m,
    pieces: run.pieces.map(({ id, count }) => `${count * sideBySide(run.of, parallels)} × ${id}`),
    joints: run.joints,
    cleats: run.cleats,
    loss_W: run.loss_W,
  };
}

function stateBay(bay: KitBay): BayReport {
  const area = ({ name, outline }: KitBay['workpiece']) => ({ name, outline_m: outline.map(statePoint) });
  return {
    outline_m: bay.outline.map(statePoint),
    obstacles: (bay.obstacles ?? []).map(area),
    walkways: (bay.walkways ?? []).map(area),
    workpiece: area(bay.workpiece),
    seam_m: bay.seam.map(statePoint),
    posts: [
      { name: 'power source', kind: 'power', at_m: statePoint(bay.power) },
      { name: 'air drop', kind: 'air', at_m: statePoint(bay.air) },
      ...(bay.work_clamp === undefined
        ? []
        : [{ name: 'work clamp', kind: 'work clamp' as const, at_m: statePoint(bay.work_clamp) }]),
    ],
    keep_out_m: bay.keep_out,
  };
}

function placeSays({ choice, parallels, least, issues }: PlaceOutcome): Sentence {
  if (choice === undefined) return issues.map(({ message }) => message).join(' ');
  const side = parallels > 1 ? `, ${parallels} leads side by side` : '';
  const lost = say`${amountOf(choice.loss_W, 'power')} in leads and hoses${side}`;
  if (least === undefined) {
    return say`Of ${choice.places} places on the grid this one loses least, ${lost}; ${choice.places_judged} judged one by one, the others ruled out by a bound.`;
  }
  const { x, y } = least.station;
  return say`Here ${lost} are lost; least is lost at ${amountOf(x, 'length')}, ${amountOf(y, 'length')}: ${amountOf(least.loss_W, 'power')}.`;
}

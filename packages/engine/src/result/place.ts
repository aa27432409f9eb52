import { z } from 'zod';
import type { Stated } from '../limit/index.ts';

/** A point of the plan view. */
export const pointReportSchema = z
  .object({ x_m: z.number().describe('To the right [m].'), y_m: z.number().describe('Up the plan [m].') })
  .meta({ id: 'PointReport', description: 'A point of the plan view.' });

const areaReportSchema = z
  .object({ name: z.string(), outline_m: z.array(pointReportSchema) })
  .meta({ id: 'AreaReport', description: 'A closed area of the plan view.' });

const bayReportSchema = z
  .object({
    outline_m: z.array(pointReportSchema).describe('Corners of the bay, in order [m].'),
    obstacles: z.array(areaReportSchema),
    walkways: z.array(areaReportSchema),
    workpiece: areaReportSchema,
    seam_m: z.array(pointReportSchema).describe('The seam, from its start [m].'),
    posts: z.array(
      z.object({ name: z.string(), kind: z.enum(['power', 'air', 'work clamp']), at_m: pointReportSchema }),
    ),
    keep_out_m: z.number().describe('Distance that the station keeps from the seam [m].'),
  })
  .meta({ id: 'BayReport', description: 'What stands in the bay.' });

const routeReportSchema = z
  .object({
    name: z.string(),
    kind: z.enum(['electrode lead', 'work lead', 'air hose']),
    from: z.string(),
    to: z.string(),
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
    name: z.string(),
    kind: z.enum(['hose', 'lead']),
    size: z.string().describe('Size of a lead, such as `95 mm2`; bore of a hose, such as `19 mm`.'),
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
    says: z.string(),
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

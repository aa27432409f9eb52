import { z } from 'zod';
import { amount, count, text } from '../document/index.ts';

const coordinate = (title: string, help: string) =>
  amount('length', { least: -1000, most: 1000 }, { title, help });
const point = z.strictObject({
  x: coordinate('x', 'Distance to the right of the bay’s origin.'),
  y: coordinate('y', 'Distance up the plan from the bay’s origin.'),
});
const outline = z.array(point).min(3).max(60);
const area = (what: string) =>
  z.strictObject({ name: text(60, { title: 'Name', help: `Name of the ${what}.` }), outline });
/** Where the work lies: a place of the bay, whatever job lies there. */
const workplace = z.strictObject({
  name: text(60, {
    title: 'Name',
    help: 'Where the work lies in this bay, such as roller bed or turntable: a bay serves many jobs.',
  }),
  outline,
});
const distance = (most: number, facts: { title: string; help: string; text: string; why: string }) =>
  amount(
    'length',
    { least: 0, most },
    { title: facts.title, help: facts.help, fallback: { text: facts.text, why: facts.why } },
  );

/** A bay in plan view. */
export const baySchema = z.strictObject({
  name: text(60, {
    title: 'Name',
    help: 'Name of the bay; a job that states it as its bay is drawn in it, any other on a plain plan of its own seam.',
  }).optional(),
  outline,
  obstacles: z.array(area('obstacle')).max(60).optional(),
  walkways: z.array(area('walkway')).max(30).optional(),
  workpiece: workplace,
  seam: z.array(point).min(2).max(60),
  power: point,
  air: point,
  work_clamp: point.optional(),
  station: point.optional(),
  keep_out: distance(50, {
    title: 'Distance from the seam',
    help: 'Distance that the control station keeps from the seam, for spatter and the carriage.',
    text: '2 m',
    why: 'clear of most spatter (judgement, no source)',
  }),
  lead_clearance: distance(20, {
    title: 'Leads from the seam',
    help: 'Distance that leads and hoses keep from the seam, but where they come to it at right angles.',
    text: '0.5 m',
    why: 'clear of spatter, and of a field that blows the arc aside (judgement, no source)',
  }),
  clearance: distance(20, {
    title: 'Clearance',
    help: 'Distance that the station keeps from walls, obstacles, walkways and workpiece.',
    text: '0.5 m',
    why: 'room to stand (judgement, no source)',
  }),
  grid: amount(
    'length',
    { least: 0.05, most: 5 },
    {
      title: 'Grid',
      help: 'Distance between the places tried.',
      fallback: { text: '0.5 m', why: 'as fine as a station is set down' },
    },
  ),
  covers: count(0, 100, {
    title: 'Covers',
    help: 'Covers in stock under which leads and hoses may cross a walkway.',
    fallback: { text: 0, why: 'none were stated, so walkways are not crossed' },
  }),
});

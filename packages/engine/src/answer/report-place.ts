import { fireZone } from '../hazard/index.ts';
import type { Outcome } from '../issue/index.ts';
import type { Job } from '../job/index.ts';
import { boreText, hosesOfKit, type Kit, type LaidLoad, stationTaskOfKit } from '../kit/index.ts';
import { formatAmount, type UnitSystem } from '../quantity/index.ts';
import type {
  AirReport,
  BayReport,
  PickReport,
  PlaceReport,
  PointReport,
  RouteReport,
} from '../result/index.ts';
import {
  type BayJet,
  chooseStation,
  conductorSizeOf,
  jetOutlines,
  type PickedRun,
  placeCautions,
  type StationChoice,
  stationAt,
  type WorkingLoop,
} from '../supply/index.ts';

type Bay = NonNullable<Kit['bay']>;

/** What the place is found from beside the kit. */
interface PlaceQuestion {
  readonly job: Job;
  readonly solved: WorkingLoop;
  readonly air: AirReport;
  /** Units of bores and places in words. */
  readonly system: UnitSystem;
}

/** Where the control station stands in the kit's bay and what is laid to it, or why no place does. */
export function reportPlace(
  kit: Kit,
  bay: Bay,
  { job, solved, air, system }: PlaceQuestion,
): { readonly place: PlaceReport; readonly issues: Extract<Outcome<never>, { ok: false }>['issues'] } {
  // As many side by side as in the leads laid now.
  const parallels = Math.max(1, ...solved.leads.map((lead) => lead.parallels));
  const jet: BayJet = { ahead: fireZone(job.site.fire).ahead, bothWays: job.seam.path === 'girth' };
  const load: LaidLoad = {
    current: solved.current_A,
    parallels,
    leadTemperature: Math.max(...solved.leads.map((lead) => lead.temperature_K)),
    torchFlow: air.torch_flow_L_per_min / 60_000,
    regulator: air.regulator_kPa * 1000,
  };
  const task = stationTaskOfKit(kit, bay, load, jet);
  const kept = {
    lead_clearance_m: bay.lead_clearance,
    jets_m: jetOutlines(bay.seam, jet).map((outline) => outline.map(pointOf)),
  };
  const found = chooseStation(task);
  const choice = bay.station === undefined ? found : stationAt(task, bay.station);
  const least =
    bay.station === undefined || !found.ok
      ? null
      : { at_m: pointOf(found.value.station), loss_W: found.value.loss_W };
  if (!choice.ok) {
    const says = choice.issues.map(({ message }) => message).join(' ');
    const nothing = {
      station: null,
      least,
      routes: [],
      picks: [],
      left: stockOf(kit, system),
      covers: 0,
      cautions: placeCautions(task.bay, []),
    };
    const place = { bay: bayReport(bay), ...nothing, ...kept, parallels, says };
    return {
      place,
      issues: choice.issues.map((issue) => ({
        ...issue,
        path: issue.path.startsWith('bay') ? issue.path : `bay.${issue.path}`,
      })),
    };
  }
  return {
    place: placeReport(kit, bayReport(bay), choice.value, {
      ...kept,
      parallels,
      least,
      chosen: bay.station === undefined ? 'found' : 'stated',
      system,
    }),
    issues: [],
  };
}

function placeReport(
  kit: Kit,
  bay: BayReport,
  choice: StationChoice,
  {
    chosen,
    system,
    ...kept
  }: Pick<PlaceReport, 'parallels' | 'least' | 'lead_clearance_m' | 'jets_m'> &
    Pick<NonNullable<PlaceReport['station']>, 'chosen'> &
    Pick<PlaceQuestion, 'system'>,
): PlaceReport {
  const { parallels, least } = kept;
  const { station, loss_W, runs, left, covers, places, places_judged } = choice;
  const times = (of: 'lead' | 'hose'): number => (of === 'lead' ? parallels : 1);
  return {
    bay,
    station: {
      at_m: pointOf(station),
      chosen,
      places_tried: places,
      places_judged,
      loss_W,
      reach_margin_m: choice.reach_margin_m,
    },
    ...kept,
    routes: runs.map((run) => routeReport(run, parallels)),
    picks: picksOf(
      stockOf(kit, system),
      runs.flatMap((run) => run.pieces.map((piece) => ({ ...piece, count: piece.count * times(run.of) }))),
    ),
    left: leftInStock(stockOf(kit, system), left, parallels),
    covers,
    cautions: choice.cautions,
    says: placeSays(choice, parallels, least, system),
  };
}

function placeSays(
  { loss_W, places, places_judged }: StationChoice,
  parallels: number,
  least: PlaceReport['least'],
  system: UnitSystem,
): string {
  const side = parallels > 1 ? `, ${parallels} leads side by side` : '';
  const lost = `${loss_W.toFixed(0)} W in leads and hoses${side}`;
  if (least === null) {
    return `Of ${places} places on the grid this one loses least, ${lost}; ${places_judged} judged one by one, the others ruled out by a bound.`;
  }
  const [across, up] = [least.at_m.x_m, least.at_m.y_m].map((each) => formatAmount(each, 'length', system));
  return `Here ${lost} are lost; least is lost at ${across}, ${up}: ${least.loss_W.toFixed(0)} W.`;
}

function routeReport(run: PickedRun, parallels: number): RouteReport {
  const [from, to] = run.run.split(' to ') as [string, string];
  const lead = run.run === 'source to work clamp' ? 'work lead' : 'electrode lead';
  return {
    name: run.run,
    kind: run.of === 'hose' ? 'air hose' : lead,
    from,
    to,
    path_m: run.way.map(pointOf),
    needed_m: run.needed_m,
    picked_m: run.length_m,
    pieces: run.pieces.map(({ id, count }) => `${count * (run.of === 'lead' ? parallels : 1)} × ${id}`),
    joints: run.joints,
    cleats: run.cleats,
    loss_W: run.loss_W,
  };
}

/** Pieces of the same kind counted together, with what the stock says of them. */
function picksOf(
  stock: readonly PickReport[],
  pieces: readonly { readonly id: string; readonly count: number }[],
): readonly PickReport[] {
  return stock.flatMap((kind) => {
    const count = pieces.reduce((sum, piece) => (piece.id === kind.name ? sum + piece.count : sum), 0);
    return count > 0 ? [{ ...kind, count }] : [];
  });
}

/** What is left, leads one by one again: those that no bundle could be made of are among them. */
function leftInStock(
  stock: readonly PickReport[],
  left: StationChoice['left'],
  parallels: number,
): readonly PickReport[] {
  return stock.map((kind) => {
    const found = left.find(({ id }) => id === kind.name);
    if (found === undefined || kind.kind === 'hose') return { ...kind, count: found?.count ?? kind.count };
    return { ...kind, count: found.count * parallels + (kind.count % parallels) };
  });
}

function stockOf(kit: Kit, system: UnitSystem): readonly PickReport[] {
  const leads = (kit.stock.leads ?? []).map(({ name, size, length, count }): PickReport => {
    const known = conductorSizeOf(size, '');
    return { name, kind: 'lead', size: known.ok ? known.value.name : '', length_m: length, count };
  });
  const hoses = hosesOfKit(kit).map(
    ({ id, bore, length, count }): PickReport => ({
      name: id,
      kind: 'hose',
      size: boreText(bore, system),
      length_m: length,
      count,
    }),
  );
  return [...leads, ...hoses];
}

function bayReport(bay: Bay): BayReport {
  const area = ({ name, outline }: Bay['workpiece']) => ({ name, outline_m: outline.map(pointOf) });
  return {
    outline_m: bay.outline.map(pointOf),
    obstacles: (bay.obstacles ?? []).map(area),
    walkways: (bay.walkways ?? []).map(area),
    workpiece: area(bay.workpiece),
    seam_m: bay.seam.map(pointOf),
    posts: [
      { name: 'power source', kind: 'power', at_m: pointOf(bay.power) },
      { name: 'air drop', kind: 'air', at_m: pointOf(bay.air) },
      ...(bay.work_clamp === undefined
        ? []
        : [{ name: 'work clamp', kind: 'work clamp' as const, at_m: pointOf(bay.work_clamp) }]),
    ],
    keep_out_m: bay.keep_out,
  };
}

function pointOf({ x, y }: { readonly x: number; readonly y: number }): PointReport {
  return { x_m: x, y_m: y };
}

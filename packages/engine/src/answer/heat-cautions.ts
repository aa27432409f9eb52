import type { Job } from '../job/index.ts';
import type { HeatReport } from './heat-report.ts';
import { inCelsius, rounded } from './heat-units.ts';

/** Temperature above which manganese steel turns brittle, as its practice says [degC]. */
const MANGANESE_MOST = 260;
const DAY = 86_400;
/** Difference at an end of the seam that is worth a word [K]. */
const END_HOTTER = 10;

/** Cautions that belong to what the heat does, the gravest first. */
export function heatCautions(job: Job, report: Omit<HeatReport, 'cautions'>): string[] {
  const { plate, heat } = job;
  const cautions: string[] = [];
  const back = report.back_face_degC;
  for (const limit of report.limits) {
    if (limit.verdict === 'fails')
      cautions.push(
        `${limit.title}: ${limit.sense === 'most' ? 'over' : 'short of'} the figure named. ${sentence(limit.remedy)}`,
      );
  }
  if (report.passes.some(({ wait_s }) => wait_s.most >= DAY)) {
    cautions.push(
      `The interpass temperature of ${inCelsius(heat.interpass_most).toFixed(0)} degC is not reached within a day: it lies at or below the temperature the plate settles at. State a higher one, or a lower preheat.`,
    );
  }
  if (heat.back_face_most === undefined && back.most > 200) {
    const behind = heat.back_face ?? 'paint, a lining, cable or contents';
    cautions.push(
      `The back face may reach ${back.most.toFixed(0)} degC: see what is behind it (${behind}) and state what that stands.`,
    );
  }
  const { ends } = report;
  if (ends !== undefined && ends.back_face_degC > ends.section_back_face_degC + END_HOTTER) {
    cautions.push(
      `The back face gets hotter at the end of the seam than along it: ${ends.back_face_degC.toFixed(0)} against ${ends.section_back_face_degC.toFixed(0)} degC for the most heat kept. ${ends.note}`,
    );
  }
  if (plate.material === 'manganese_steel') {
    cautions.push(
      `Manganese steel turns brittle above about ${MANGANESE_MOST} degC (common practice, no source): hold the plate below that between passes; the job lets it be at ${inCelsius(heat.interpass_most).toFixed(0)} degC.`,
    );
  }
  if (plate.material === 'copper_alloy') {
    cautions.push(
      'Conduction is that of pure copper; brasses, bronzes and copper-nickels conduct far less and get hotter beside the groove.',
    );
  }
  cautions.push(
    `What the plate keeps of the arc’s heat has not been measured for this process: read every figure as the band from ${rounded(report.kept_share.least * 100)} to ${rounded(report.kept_share.most * 100)} % of the arc energy.`,
  );
  if (report.hardness !== null) {
    cautions.push(
      `Grind the skin off before welding or leaving the groove: the carbon-rich film may reach ${rounded(report.hardness.skin_HV)} HV whatever the plate is.`,
    );
  }
  if (report.preheat !== null) {
    cautions.push(
      'Preheats are shown to compare, partly from recalled tables: the code and the welding procedure that govern the job set the temperature.',
    );
  }
  return cautions;
}

function sentence(remedy: string): string {
  return `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}.`;
}

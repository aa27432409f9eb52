import { ARC_SHARE, skinHardness } from '../heat/index.ts';
import type { Job } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { type Amount, amountOf, fromUnit, type Sentence, say } from '../quantity/index.ts';
import type { HeatReport } from '../result/index.ts';
import { rounded } from './heat-units.ts';

const DAY = 86_400;
/** Difference at an end of the seam that is worth a word [K]. */
const END_HOTTER = 10;

/** Cautions that belong to what the heat does, the gravest first. */
export function heatCautions(job: Job, report: Omit<HeatReport, 'cautions'>): Sentence[] {
  const { plate, heat } = job;
  const cautions: Sentence[] = [];
  const back = report.back_face_degC;
  for (const limit of report.limits) {
    if (limit.verdict === 'fails')
      cautions.push(
        `${limit.title}: ${limit.sense === 'most' ? 'over' : 'short of'} the figure named. ${sentence(limit.remedy)}`,
      );
  }
  for (const { number, reaching_share: reaching } of report.passes) {
    if (reaching.middle <= ARC_SHARE.most) continue;
    const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
    cautions.push(
      `Pass ${number} balances only if ${percent(reaching.least)} to ${percent(Math.min(1, reaching.most))} of its arc power reaches the work; ${percent(ARC_SHARE.least)} to ${percent(ARC_SHARE.most)} was measured for other arcs. It may cut shallower than predicted, or the plate may keep less than is told here: prove it on scrap.`,
    );
  }
  if (report.passes.some(({ wait_s }) => wait_s.most >= DAY)) {
    cautions.push(
      say`The interpass temperature of ${amountOf(heat.interpass_most, 'temperature')} is not reached within a day: it lies at or below the temperature the plate settles at. State a higher one, or a lower preheat.`,
    );
  }
  if (heat.back_face_most === undefined && back.most > 200) {
    const behind = heat.back_face ?? 'paint, a lining, cable or contents';
    cautions.push(
      say`The back face may reach ${celsius(back.most)}: see what is behind it (${behind}) and state what that stands.`,
    );
  }
  const { ends } = report;
  if (ends !== undefined && ends.back_face_degC > ends.section_back_face_degC + END_HOTTER) {
    cautions.push(
      say`The back face gets hotter at the end of the seam than along it: ${celsius(ends.back_face_degC)} against ${celsius(ends.section_back_face_degC)} for the most heat kept. ${ends.note}`,
    );
  }
  const metal = metalOf(plate.material);
  if (heat.interpass_most > metal.interpassMost.value) {
    cautions.push(
      say`The job lets the plate be at ${amountOf(heat.interpass_most, 'temperature')} between passes; for this metal at most ${amountOf(metal.interpassMost.value, 'temperature')} is usual: ${metal.interpassMost.source}.`,
    );
  }
  cautions.push(...metal.heatCautions.map(({ text }) => text));
  cautions.push(
    `What the plate keeps of the arc’s heat has not been measured for this process: read every figure as the band from ${rounded(report.kept_share.least * 100)} to ${rounded(report.kept_share.most * 100)} % of the arc energy.`,
  );
  cautions.push(
    say`Grind the skin off before welding or leaving the groove, ${amountOf(fromUnit(report.skin.allowance_mm, 'mm'), 'depth')} all round: metal that melted and stayed has taken up carbon, whatever the plate is${metal.hardens ? ` and whether or not a hardness could be worked out; the film may reach ${rounded(skinHardness())} HV` : ''}.`,
  );
  if (report.preheat !== null) {
    cautions.push(
      'Preheats are shown to compare, partly from recalled tables: the code and the welding procedure that govern the job set the temperature.',
    );
  }
  return cautions;
}

function celsius(value: number): Amount {
  return amountOf(fromUnit(value, 'degC'), 'temperature');
}

function sentence(remedy: string): string {
  return `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}.`;
}

import type { Job } from '../job/index.ts';
import { metalOf } from '../material/index.ts';
import { amountOf, capitalised, type Sentence, say } from '../quantity/index.ts';
import { skinHardness } from './hardness-band.ts';
import { ARC_SHARE } from './kept-heat.ts';
import type { HeatOutcome } from './outcome.ts';
import { rounded } from './span.ts';

const DAY = 86_400;
/** Temperature of the back face from which what lies behind it is asked for [K]. */
const WARM_BEHIND = 473.15;
/** Difference at an end of the seam that is worth a word [K]. */
const END_HOTTER = 10;

/** Cautions that belong to what the heat does, the gravest first. */
export function heatCautions(job: Job, outcome: Omit<HeatOutcome, 'cautions'>): Sentence[] {
  const { plate, heat } = job;
  const cautions: Sentence[] = [];
  const back = outcome.backFace;
  for (const limit of outcome.limits) {
    if (limit.verdict === 'fails')
      cautions.push(
        say`${limit.title}: ${limit.sense === 'most' ? 'over' : 'short of'} the figure named. ${capitalised(limit.remedy)}.`,
      );
  }
  for (const {
    number,
    heat: { reaching },
  } of outcome.passes) {
    if (reaching.middle <= ARC_SHARE.most) continue;
    const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
    cautions.push(
      `Pass ${number} balances only if ${percent(reaching.least)} to ${percent(Math.min(1, reaching.most))} of its arc power reaches the work; ${percent(ARC_SHARE.least)} to ${percent(ARC_SHARE.most)} was measured for other arcs. It may cut shallower than predicted, or the plate may keep less than is told here: prove it on scrap.`,
    );
  }
  if (outcome.passes.some(({ wait }) => wait.most >= DAY)) {
    cautions.push(
      say`The interpass temperature of ${amountOf(heat.interpass_most, 'temperature')} is not reached within a day: it lies at or below the temperature the plate settles at. State a higher one, or a lower preheat.`,
    );
  }
  if (heat.back_face_most === undefined && back.most > WARM_BEHIND) {
    const behind = heat.back_face ?? 'paint, a lining, cable or contents';
    cautions.push(
      say`The back face may reach ${amountOf(back.most, 'temperature')}: see what is behind it (${behind}) and state what that stands.`,
    );
  }
  const { ends } = outcome;
  if (ends !== undefined && ends.backFace > ends.sectionBackFace + END_HOTTER) {
    cautions.push(
      say`The back face gets hotter at the end of the seam than along it: ${amountOf(ends.backFace, 'temperature')} against ${amountOf(ends.sectionBackFace, 'temperature')} for the most heat kept. ${ends.note}`,
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
    `What the plate keeps of the arc’s heat has not been measured for this process: read every figure as the band from ${rounded(outcome.keptShare.least * 100)} to ${rounded(outcome.keptShare.most * 100)} % of the arc energy.`,
  );
  cautions.push(
    say`Grind the skin off before welding or leaving the groove, ${amountOf(outcome.skin.allowance, 'depth')} all round: metal that melted and stayed has taken up carbon, whatever the plate is${metal.hardens ? ` and whether or not a hardness could be worked out; the film may reach ${rounded(skinHardness())} HV` : ''}.`,
  );
  if (typeof outcome.preheat !== 'string') {
    cautions.push(
      'Preheats are shown to compare, partly from recalled tables: the code and the welding procedure that govern the job set the temperature.',
    );
  }
  return cautions;
}

import type { FaultObservable } from './model.ts';

/** Time to look at the groove or to ask the operator again [min]. */
const LOOK = 1;

function symptom(id: string, title: string, ask: string, otherwise: number): FaultObservable {
  return { id, kind: 'symptom', title, ask, minutes: LOOK, otherwise: { yes: otherwise } };
}

/**
 * What a run shows. `otherwise`, judgement, no source: about every third case shows something that its cause does not
 * explain.
 */
export const SYMPTOMS: readonly FaultObservable[] = [
  symptom(
    'shallow_start',
    'a shallow start',
    'Is the first centimetre or two shallower than the rest?',
    0.025,
  ),
  symptom('deep_start', 'a pit at the start', 'Is the first centimetre or two deeper than the rest?', 0.02),
  {
    id: 'depth',
    kind: 'symptom',
    title: 'the depth over the whole length',
    ask: 'Is the groove over its whole length shallower than the plan allows (low), as planned, or deeper (high)?',
    minutes: LOOK,
    otherwise: { low: 0.03, high: 0.02 },
  },
  symptom(
    'uneven_depth',
    'a depth that drifts along the seam',
    'Does the depth rise or fall along the seam?',
    0.03,
  ),
  symptom('ridged_floor', 'a ridged floor', 'Does the floor show ridges across the groove?', 0.02),
  symptom(
    'carbon_deposit',
    'carbon deposit',
    'Are there black, hard deposits or copper spots in the groove?',
    0.02,
  ),
  symptom(
    'slag_left',
    'slag left in the groove',
    'Does melt or slag cling to the floor or the edges?',
    0.025,
  ),
  symptom('hunting_arc', 'a hunting arc', 'Do volts, amps or the sound of the arc swing to and fro?', 0.025),
  symptom('arc_goes_out', 'an arc that goes out', 'Does the arc go out under way?', 0.02),
  symptom('hard_start', 'an arc that is hard to start', 'Does the arc need several tries to start?', 0.02),
  symptom(
    'electrode_not_feeding',
    'an electrode that does not feed',
    'Does the electrode stay behind or feed by jerks?',
    0.015,
  ),
  symptom(
    'electrode_overheated',
    'an electrode glowing far back',
    'Does the electrode glow, or lose its copper, far back from the tip?',
    0.02,
  ),
  symptom(
    'touches_down',
    'an electrode that touches down',
    'Does the electrode touch the plate under way?',
    0.015,
  ),
  symptom('groove_wandering', 'a wandering groove', 'Does the groove leave the line of the seam?', 0.015),
  symptom('leaning_arc', 'an arc that leans', 'Does the arc lean to one side or towards one end?', 0.015),
  symptom(
    'hot_joint',
    'a hot joint',
    'Is a joint, lug or clamp hotter than the lead beside it? Do not touch: look, or use an infrared thermometer.',
    0.015,
  ),
  symptom(
    'hot_leads',
    'leads warm over their length',
    'Power off; are the leads warm over their whole length, not at a joint only?',
    0.015,
  ),
  symptom(
    'worse_at_ends',
    'trouble at the ends of the seam',
    'Is it worst near one end or both ends of the seam?',
    0.03,
  ),
  symptom('sputtering', 'a spitting arc', 'Does the arc spit and crackle, with spray from the jet?', 0.02),
  symptom(
    'from_first_arc',
    'trouble from the first arc of this set-up on',
    'Has it been so since the first arc of this set-up?',
    0.3,
  ),
  symptom(
    'after_electrode_change',
    'trouble since an electrode change',
    'Did it begin with a new electrode?',
    0.05,
  ),
  symptom(
    'worsens_with_time',
    'trouble that grows with arc time',
    'Does it get worse the longer the arc burns?',
    0.08,
  ),
  symptom(
    'one_sided',
    'one edge of the groove worse than the other',
    'Is slag or roughness mostly on one edge?',
    0.02,
  ),
  symptom('even_pitch', 'marks at an even pitch', 'Do ridges or pits follow at an even distance?', 0.015),
];

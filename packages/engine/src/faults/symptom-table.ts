import type { FaultObservable } from './model.ts';

/** Time to look at the groove or to ask the operator again [min]. */
const LOOK = 1;

function symptom(id: string, title: string, ask: string, otherwise: number): FaultObservable {
  return { id, kind: 'symptom', title, ask, minutes: LOOK, otherwise: { yes: otherwise } };
}

/** What a run shows. `otherwise`: judgement, no source. */
export const SYMPTOMS: readonly FaultObservable[] = [
  symptom(
    'shallow_start',
    'a shallow start',
    'Is the first centimetre or two shallower than the rest?',
    0.08,
  ),
  symptom('shallow_throughout', 'a groove shallow all along', 'Is the groove shallow over its length?', 0.08),
  symptom(
    'too_deep',
    'a groove deeper than planned',
    'Is the groove deeper than planned over its length?',
    0.04,
  ),
  symptom(
    'uneven_depth',
    'a depth that drifts along the seam',
    'Does the depth rise or fall along the seam?',
    0.08,
  ),
  symptom('ridged_floor', 'a ridged floor', 'Does the floor show ridges across the groove?', 0.06),
  symptom(
    'carbon_deposit',
    'carbon deposit',
    'Are there black, hard deposits or copper spots in the groove?',
    0.04,
  ),
  symptom('slag_left', 'slag left in the groove', 'Does melt or slag cling to the floor or the edges?', 0.06),
  symptom('hunting_arc', 'a hunting arc', 'Do volts, amps or the sound of the arc swing to and fro?', 0.07),
  symptom('arc_goes_out', 'an arc that goes out', 'Does the arc go out under way?', 0.05),
  symptom('hard_start', 'an arc that is hard to start', 'Does the arc need several tries to start?', 0.05),
  symptom(
    'electrode_not_feeding',
    'an electrode that does not feed',
    'Does the electrode stay behind or feed by jerks?',
    0.03,
  ),
  symptom(
    'electrode_overheated',
    'an electrode glowing far back',
    'Does the electrode glow, or lose its copper, far back from the tip?',
    0.04,
  ),
  symptom(
    'touches_down',
    'an electrode that touches down',
    'Does the electrode touch the plate under way?',
    0.04,
  ),
  symptom('groove_wandering', 'a wandering groove', 'Does the groove leave the line of the seam?', 0.04),
  symptom(
    'leaning_arc',
    'an arc that leans',
    'Does the arc lean to one side or one end, worse near the ends?',
    0.03,
  ),
  symptom(
    'hot_joint',
    'a hot joint',
    'Is a joint, lug or clamp hotter than the lead beside it? Do not touch: look, or use an infrared thermometer.',
    0.03,
  ),
  symptom('sputtering', 'a spitting arc', 'Does the arc spit and crackle, with spray from the jet?', 0.04),
];

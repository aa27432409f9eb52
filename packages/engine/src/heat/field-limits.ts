import type { Job } from '../job/index.ts';
import { type Limit, limitOf, type Source } from '../limit/index.ts';
import type { HeatOutcome, PreheatRow } from './outcome.ts';

const JOB: Source = { text: 'the job', provenance: 'job file' };

/** What the report holds the field against: only what the job states; none of it refuses a plan. */
export function fieldLimits(
  { heat }: Job,
  { backFace, hardness, preheat }: Pick<HeatOutcome, 'backFace' | 'hardness' | 'preheat'>,
): Limit[] {
  const limits: Limit[] = [];
  if (heat.back_face_most !== undefined) {
    limits.push(
      limitOf({
        id: 'back_face_field',
        title: 'Back face, most heat kept',
        demand: backFace.most,
        capacity: heat.back_face_most,
        unit: 'degC',
        sense: 'most',
        hard: false,
        source: JOB,
        remedy: 'less heat in each pass, a cooler start, or longer waits between passes',
      }),
    );
  }
  if (heat.hardness_most_HV !== undefined && typeof hardness !== 'string') {
    limits.push(
      limitOf({
        id: 'hardness',
        title: 'Hardness, upper end of the band',
        demand: hardness.most,
        capacity: heat.hardness_most_HV,
        unit: 'HV',
        sense: 'most',
        hard: false,
        source: JOB,
        remedy: 'a warmer plate, and grinding: the re-weld melts or tempers what is left',
      }),
    );
  }
  const asked = strictest(typeof preheat === 'string' ? [] : preheat.methods);
  if (heat.preheat !== undefined && asked !== undefined) {
    limits.push(
      limitOf({
        id: 'gouging_preheat',
        title: 'Preheat for gouging',
        demand: heat.preheat,
        capacity: asked.temperature,
        unit: 'degC',
        sense: 'least',
        hard: false,
        source: {
          text: `${asked.method.method}; for gouging common practice, no code formula`,
          provenance: asked.method.source.provenance,
        },
        remedy: 'preheat as for the re-weld',
      }),
    );
  }
  return limits;
}

/** The method that asks for most, where one gives a temperature. */
function strictest(
  methods: readonly PreheatRow[],
): { readonly method: PreheatRow; readonly temperature: number } | undefined {
  return methods
    .flatMap((method) => (method.temperature === null ? [] : [{ method, temperature: method.temperature }]))
    .sort((a, b) => b.temperature - a.temperature)[0];
}

import type { Job } from '../job/index.ts';
import { type Limit, limitOf, type Source } from '../limit/index.ts';
import { fromUnit } from '../quantity/index.ts';
import type { HeatReport, PreheatMethod } from '../result/index.ts';

const JOB: Source = { text: 'the job', provenance: 'job file' };

/** What the report holds the field against: only what the job states; none of it refuses a plan. */
export function heatReportLimits(
  { heat }: Job,
  report: Pick<HeatReport, 'back_face_degC' | 'hardness' | 'preheat'>,
): Limit[] {
  const limits: Limit[] = [];
  if (heat.back_face_most !== undefined) {
    limits.push(
      limitOf({
        id: 'back_face_field',
        title: 'Back face, most heat kept',
        demand: fromUnit(report.back_face_degC.most, 'degC'),
        capacity: heat.back_face_most,
        unit: 'degC',
        sense: 'most',
        hard: false,
        source: JOB,
        remedy: 'less heat in each pass, a cooler start, or longer waits between passes',
      }),
    );
  }
  if (heat.hardness_most_HV !== undefined && report.hardness !== null) {
    limits.push(
      limitOf({
        id: 'hardness',
        title: 'Hardness, upper end of the band',
        demand: report.hardness.most_HV,
        capacity: heat.hardness_most_HV,
        unit: 'HV',
        sense: 'most',
        hard: false,
        source: JOB,
        remedy: 'a warmer plate, and grinding: the re-weld melts or tempers what is left',
      }),
    );
  }
  const asked = strictest(report.preheat?.methods ?? []);
  if (heat.preheat !== undefined && asked !== undefined) {
    limits.push(
      limitOf({
        id: 'gouging_preheat',
        title: 'Preheat for gouging',
        demand: heat.preheat,
        capacity: fromUnit(asked.temperature, 'degC'),
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
  methods: readonly PreheatMethod[],
): { readonly method: PreheatMethod; readonly temperature: number } | undefined {
  return methods
    .flatMap((method) =>
      method.temperature_degC === null ? [] : [{ method, temperature: method.temperature_degC }],
    )
    .sort((a, b) => b.temperature - a.temperature)[0];
}

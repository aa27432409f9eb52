import {
  type DocumentField,
  exactAmount,
  type Issue,
  jobFields,
  kitFields,
  type Outcome,
  parseAmount,
  type QuantityKind,
  readingsFields,
  readJob,
  readKit,
  readReadings,
} from '@furrow/engine';
import { describe, expect, it } from 'vitest';

const KINDS = [
  { name: 'job', version: 'furrow', fields: jobFields(), read: readJob },
  { name: 'kit', version: 'furrow_kit', fields: kitFields(), read: readKit },
  { name: 'readings', version: 'furrow_readings', fields: readingsFields(), read: readReadings },
] as const;

/** An amount far above or below what any field accepts, of each kind. */
const FAR: Readonly<Record<QuantityKind, string>> = {
  length: '1e12 m',
  speed: '1e12 mm/min',
  pressure: '1e12 bar',
  current: '1e12 A',
  voltage: '1e12 V',
  time: '1e12 h',
  angle: '1e12 deg',
  area: '1e12 mm2',
  temperature: '1e12 °C',
  air_flow: '1e12 L/min',
  power: '1e12 kW',
  share: '1e12 %',
  volume: '1e12 L',
  resistance: '1e12 mohm',
};

describe.each(KINDS)('bounds of the amounts of a $name', ({ version, fields, read }) => {
  const amounts = fields.filter(({ entry }) => entry === 'amount');

  it('are many', () => {
    expect(amounts.length).toBeGreaterThan(5);
  });

  it.each(amounts.map((field) => [field.path, field] as const))('%s', (path, field) => {
    const refusal = rangeIssue(far(field));
    const [least, most] = (refusal?.accepted ?? '').split(' to ').map(spellings);
    expect(least?.length, refusal?.accepted).toBeGreaterThan(0);
    expect(most?.length, refusal?.accepted).toBeGreaterThan(0);
    expect(spellings(refusal?.nearest ?? '')).toEqual(most);
    const [low, high] = [least!, most!].map((texts) => parsed(texts[0]!)) as [number, number];
    expect(low).toBeLessThan(high);
    for (const text of [...least!, ...most!]) expect(rangeIssue(text), text).toBeUndefined();
    for (const text of least!) expect(parsed(text) / (low || 1)).toBeCloseTo(low === 0 ? 0 : 1, 2);
    for (const text of most!) expect(parsed(text) / high).toBeCloseTo(1, 2);
    const nudge = (bound: number) => 0.0015 * (Math.abs(bound) || high);
    // below absolute zero there is no amount
    const below = low - nudge(low);
    if (field.kind !== 'temperature' || below > 0) expect(refused(below), `${below}`).toBe(true);
    expect(refused(high + nudge(high)), `${high}`).toBe(true);

    function parsed(text: string): number {
      const outcome = parseAmount(text, field.kind!);
      if (!outcome.ok) throw new Error(`“${text}” cannot be read`);
      return outcome.value;
    }
    function refused(value: number): boolean {
      return rangeIssue(exactAmount(value, field.kind!, 'metric')) !== undefined;
    }
    function rangeIssue(text: string): Issue | undefined {
      const outcome: Outcome<unknown> = read(JSON.stringify({ [version]: 1, ...holding(path, text) }));
      const at = path.replaceAll('.*', '[0]');
      const issues = outcome.ok ? [] : outcome.issues.filter((issue) => issue.path === at);
      for (const { code, message } of issues) expect(code, message).toMatch(/RANGE|COMBINATION/u);
      return issues.find(({ code }) => code === 'AMOUNT_RANGE');
    }
  });
});

function far(field: DocumentField): string {
  return FAR[field.kind!];
}

/** The amounts of a bound: `1 m (39.37 in)` holds two. */
function spellings(bound: string): string[] {
  const [metric = '', inch] = bound.replace(/\)$/u, '').split(' (');
  return inch === undefined ? [metric] : [metric, inch];
}

/** A document that holds one field, an entry of a list being its first. */
function holding(path: string, text: string): Record<string, unknown> {
  return path
    .split('.')
    .reduceRight<unknown>((inner, name) => (name === '*' ? [inner] : { [name]: inner }), text) as Record<
    string,
    unknown
  >;
}

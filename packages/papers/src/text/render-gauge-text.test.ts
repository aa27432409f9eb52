import { readFileSync } from 'node:fs';
import { answerGauge, type GaugeReport, readGauge } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { renderGaugeText } from './render-gauge-text.ts';

const TEXT = readFileSync(new URL('../../../../examples/gauges/bridge-gauge.yaml', import.meta.url), 'utf8');

function reported(text: string): GaugeReport {
  const read = readGauge(text);
  if (!read.ok) throw new Error(read.issues[0]?.message);
  return answerGauge(read.value, '0');
}

describe('the text of a gauge', () => {
  it.each([
    [
      'metric',
      /^bridge gauge 3: one reading is within 0\.420 mm of the depth, 95 %\.$/u,
      'repeated readings by one hand                      0.148 mm',
    ],
    [
      'inch',
      /^bridge gauge 3: one reading is within 0\.0165 in of the depth, 95 %\.$/u,
      'repeated readings by one hand                     0.0058 in',
    ],
  ] as const)('says in %s what a reading is worth first, and names the method', (units, first, line) => {
    const text = renderGaugeText(reported(TEXT), units);
    expect(text.split('\n')[0]).toMatch(first);
    expect(text).toContain('analysis of variance');
    expect(text).toContain(line);
    expect(Math.max(...text.split('\n').map((each) => each.length))).toBeLessThanOrEqual(100);
    expect(text).not.toMatch(/NaN|undefined/u);
  });

  it('says first that a gauge is not to be used', () => {
    const text = renderGaugeText(reported(TEXT.replace('block: 10 mm', 'block: 9 mm')), 'metric');
    expect(text.split('\n')[0]).toContain('not to be used');
    expect(text).toMatch(/off by 1\.033 mm[\s\S]*fails/u);
  });

  it('says what is missing without a study and a check', () => {
    const text = renderGaugeText(reported('furrow_gauge: 1\ngauge: g'), 'metric');
    expect(text).toContain('no study tells the uncertainty');
    expect(text).toContain('not checked against a block');
  });
});

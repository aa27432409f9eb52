import { describe, expect, test } from 'vitest';
import type { PaperBlock, PaperDocument } from '../blocks/index.ts';
import { exampleJob, sampleAnswer, samplePlan } from '../sample-plan.test-data.ts';
import { cardDocument } from './card-document.ts';

const read = exampleJob('penstock-seam');
const options = { units: 'metric', paper: 'a4' } as const;

/** Every block of a paper, those inside columns included. */
function flat(blocks: readonly PaperBlock[]): PaperBlock[] {
  return blocks.flatMap((block) =>
    block.kind === 'columns' ? flat(block.columns.flatMap((column) => column.blocks)) : [block],
  );
}

describe('set-up card', () => {
  const plan = samplePlan(read, { tracks: 1, layers: 2, gauge: true });
  const card = cardDocument(read, sampleAnswer(read, plan, ['Mind the jet.']), options);
  const text = JSON.stringify(card);

  test('gives the settings as big numbers', () => {
    const big = flat(card.blocks).flatMap((block) =>
      block.kind === 'figures' && block.size === 'big' ? block.items : [],
    );
    expect(big.map(({ label, value, unit }) => [label, value, unit])).toEqual([
      ['Electrode', '12.7', 'mm'],
      ['Current', '850', 'A'],
      ['Arc voltage', '42.0', 'V'],
      ['Travel', '700', 'mm/min'],
      ['Passes', '2', undefined],
      ['Polarity', 'electrode +', undefined],
      ['Air, flowing', 'ask', undefined],
      ['Angle', '45°', undefined],
      ['Stick-out', '100', 'mm'],
      ['Preheat', 'ask', undefined],
      ['Interpass', '250', '°C'],
    ]);
  });

  test('gives both ends of a range whole', () => {
    const passes = plan.passes.map((pass, index) => ({
      ...pass,
      set_by_gauge: false,
      travel_mm_per_min: 700 + 200 * index,
      dwell_s: 0.2 + 0.1 * index,
    }));
    const ranged = cardDocument(read, sampleAnswer(read, { ...plan, passes }), {
      units: 'inch',
      paper: 'a4',
    });
    const travel = flat(ranged.blocks)
      .flatMap((block) => (block.kind === 'figures' ? block.items : []))
      .find(({ label }) => label === 'Travel');
    expect(travel).toEqual({ label: 'Travel', value: '27.6–35.4', unit: 'in/min', note: 'dwell 0.2–0.3 s' });
  });

  test('says what the figures assume where no preheat is stated, and the set minimum where one is', () => {
    const notes = (card: PaperDocument): string[] =>
      flat(card.blocks).flatMap((block) =>
        block.kind === 'figures'
          ? block.items.flatMap(({ label, value, note }) =>
              label === 'Preheat' || label === 'Interpass' ? [`${label} ${value}: ${note}`] : [],
            )
          : [],
      );
    expect(notes(card)).toEqual([
      'Preheat ask: not stated; 82 °C assumed',
      'Interpass 250: at most; not stated, usual',
    ]);
    const stated = exampleJob('penstock-seam', (text) =>
      text.replace('heat:\n', 'heat:\n  preheat: 100 degC\n  interpass_most: 150 degC\n'),
    );
    const inch = { units: 'inch', paper: 'a4' } as const;
    expect(notes(cardDocument(stated, sampleAnswer(stated, plan), inch))).toEqual([
      'Preheat 212: at least, beside the seam',
      'Interpass 302: at most, before a pass',
    ]);
  });

  test('names its inputs, the tight margins, the cautions and the places to sign by hand', () => {
    expect(card.colophon).toContain(read.revision.slice(0, 12));
    expect(card.colophon).toContain('seed 1');
    expect(text).toContain('Depth of one pass: 17.0 mm (at most 19.0 mm) tight');
    expect(text).not.toContain('Power to melt the groove out: ');
    expect(text).toContain('Mind the jet.');
    // evidence stands on the procedure sheet, and no name of a law on the card
    expect(text).not.toMatch(/Doubt about|published-|removal law/u);
    expect(text).toContain('Released by');
    expect(text).toContain('the software never signs');
  });

  test('brings the electrodes of nine jobs in ten, rounded up', () => {
    expect(
      flat(card.blocks).flatMap((block) => (block.kind === 'figures' ? block.items : [])),
    ).toContainEqual({
      label: 'Electrodes to bring',
      value: '13',
      note: 'mean 11.2, half the time at most 11',
    });
  });

  test('gives no number to run where there is no plan', () => {
    const refused = cardDocument(read, sampleAnswer(read, undefined), options);
    const kinds = flat(refused.blocks);
    expect(kinds.some((block) => block.kind === 'figures')).toBe(false);
    const written = JSON.stringify(refused);
    expect(written).toContain('Nothing to run');
    expect(written).toContain('a depth that may fall short');
    expect(written).not.toContain('Released by');
    expect(written).not.toMatch(/mm\/min|\d A"/);
  });
});

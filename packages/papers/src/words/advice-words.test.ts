import { expect, test } from 'vitest';
import { adviceWords } from './advice-words.ts';

test('names source and provenance once', () => {
  const advice = {
    topic: 'Polarity',
    text: 'Electrode positive.',
    source: 'a leaflet',
    provenance: 'memory',
  } as const;
  expect(adviceWords(advice)).toBe('Polarity: Electrode positive. (a leaflet, memory)');
  const custom = { ...advice, source: 'common practice, no source', provenance: 'common practice' } as const;
  expect(adviceWords(custom)).toBe('Polarity: Electrode positive. (common practice, no source)');
});

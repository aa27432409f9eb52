import { describe, expect, it } from 'vitest';
import { jobFile } from '../../sheet/document/index.ts';
import { kitSpelling } from './kit-spelling.ts';

const FILE = jobFile(
  'kit:\n  electrodes:\n    - { diameter: 5/16 in }\n    - { diameter_mm: 9.525 }\n    - {}\n',
);

describe('kitSpelling', () => {
  it('finds an electrode of the kit by its size', () => {
    expect(kitSpelling(FILE, 7.9375)).toBe('5/16 in');
    expect(kitSpelling(FILE, 9.525)).toBe('9.525 mm');
  });

  it('knows nothing of electrodes that are not in the kit', () => {
    expect(kitSpelling(FILE, 12.7)).toBeUndefined();
    expect(kitSpelling(jobFile(''), 12.7)).toBeUndefined();
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PROGRAM_VERSION } from './program-version.ts';

describe('PROGRAM_VERSION', () => {
  it('is the version that the packages carry', () => {
    const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
      version: string;
    };
    expect(PROGRAM_VERSION).toBe(manifest.version);
  });
});

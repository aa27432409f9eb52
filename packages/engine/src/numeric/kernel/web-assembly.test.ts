import { expect, it } from 'vitest';
import { bytesOfBase64 } from './web-assembly.ts';

it('reads base64 of every remainder', () => {
  for (const bytes of [[], [0], [255, 1], [7, 128, 64], Array.from({ length: 256 }, (_, at) => at)]) {
    expect([...bytesOfBase64(Buffer.from(bytes).toString('base64'))]).toEqual(bytes);
  }
});

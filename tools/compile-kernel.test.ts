import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { compileKernel, kernelModule, MODULE } from './compile-kernel.mjs';
import { ROOT } from './install.mjs';

it('the heat kernel that is committed is what its source compiles to: if not, run `npm run kernel`', async () => {
  expect(readFileSync(join(ROOT, MODULE), 'utf8')).toBe(kernelModule(await compileKernel()));
});

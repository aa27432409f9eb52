import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { KERNELS, kernelModule } from './compile-kernel.mjs';
import { ROOT } from './install.mjs';

it.each(KERNELS)(
  'the kernel $name that is committed is what its source compiles to: if not, run `npm run kernel`',
  async (kernel) => {
    expect(readFileSync(join(ROOT, kernel.module), 'utf8')).toBe(await kernelModule(kernel));
  },
);

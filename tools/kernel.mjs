import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { KERNELS, kernelModule } from './compile-kernel.mjs';
import { ROOT } from './install.mjs';

for (const kernel of KERNELS) writeFileSync(join(ROOT, kernel.module), await kernelModule(kernel));
const modules = KERNELS.map(({ module }) => module);
process.exitCode = spawnSync('npx', ['biome', 'check', ...modules], { cwd: ROOT, stdio: 'inherit' }).status;

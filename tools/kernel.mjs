import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileKernel, kernelModule, MODULE } from './compile-kernel.mjs';
import { ROOT } from './install.mjs';

writeFileSync(join(ROOT, MODULE), kernelModule(await compileKernel()));
process.exitCode = spawnSync('npx', ['biome', 'check', MODULE], { cwd: ROOT, stdio: 'inherit' }).status;

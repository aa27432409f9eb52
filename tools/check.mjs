import { runChecks } from './checks.mjs';

const failed = await runChecks();
if (failed.length > 0) console.log(`\nFailed: ${failed.join(', ')}`);
process.exitCode = failed.length === 0 ? 0 : 1;

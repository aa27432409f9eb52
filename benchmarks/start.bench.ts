/**
 * What it costs to start the built program: processor time of whole runs, beside that of a Node that does nothing, and what
 * plan and cost of the shipped jobs take with the shipped kit, the start taken off.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { machineLine } from './timing.ts';

const RUNS = 7;
const PROGRAM = fileURLToPath(new URL('../packages/cli/bin/furrow.js', import.meta.url));
const EXAMPLES = fileURLToPath(new URL('../examples/', import.meta.url));
const SEAM = `${EXAMPLES}penstock-seam.yaml`;
const KIT = `${EXAMPLES}yard-kit.yaml`;
const JOBS = ['penstock-seam', 'defect-pocket', 'casting-wash'] as const;
/** What is asked of them after the start [s]. */
const ASKED = { plan: 0.3, cost: 1.5 } as const;

/** Writes at its end what a run took, where its own output does not go. */
const METER =
  'import { writeSync } from "node:fs"; process.on("exit", () => { const { user, system } = process.cpuUsage(); writeSync(3, String(user + system)); });';

/** Processor time of one run of Node [s]. */
function once(args: readonly string[]): number {
  const flags = ['--import', `data:text/javascript,${encodeURIComponent(METER)}`];
  const { output } = spawnSync(process.execPath, [...flags, ...args], {
    stdio: ['ignore', 'ignore', 'inherit', 'pipe'],
  });
  return Number(output[3]?.toString()) / 1e6;
}

/** Median of a few runs [s]. */
function cpu(args: readonly string[]): number {
  const times = Array.from({ length: RUNS }, () => once(args)).sort((one, other) => one - other);
  return times[Math.floor(RUNS / 2)]!;
}

if (existsSync(fileURLToPath(new URL('../packages/cli/dist/main.js', import.meta.url)))) {
  console.log(machineLine());
  const nothing = cpu(['-e', '0']);
  console.log(`node -e 0: ${nothing.toFixed(3)} s`);
  for (const args of [['--version'], ['check-file', SEAM], ['plan', SEAM], ['plan', SEAM, '--kit', KIT]]) {
    const time = cpu([PROGRAM, ...args]);
    const words = args.map((arg) => arg.replace(EXAMPLES, '')).join(' ');
    console.log(`furrow ${words}: ${time.toFixed(3)} s, ${(time / nothing).toFixed(1)} times that`);
  }
  const start = cpu([PROGRAM, '--version']);
  for (const job of JOBS) {
    for (const [command, asked] of Object.entries(ASKED)) {
      const time = cpu([PROGRAM, command, `${EXAMPLES}${job}.yaml`, '--kit', KIT]) - start;
      console.log(
        `furrow ${command} ${job} with its kit, after the start: ${time.toFixed(2)} s, ${(time / asked).toFixed(1)} times what is asked`,
      );
    }
  }
} else {
  console.log('The program is not built: run `npm run build` first. Nothing measured.');
}

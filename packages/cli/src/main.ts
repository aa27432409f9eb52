import { PROGRAM_VERSION } from '@furrow/contract';
import { jobJsonSchema, kitJsonSchema, readingsJsonSchema } from '@furrow/engine';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { CardOptions } from './card-command.ts';
import { checkCommand, checkKitCommand } from './check-command.ts';
import { watchOutput } from './closed-output.ts';
import type { CompareOptions } from './compare-command.ts';
import type { CostCommandOptions } from './cost-command.ts';
import { EXIT } from './exit-code.ts';
import type { HazardsOptions } from './hazards-command.ts';
import type { HeatOptions } from './heat-command.ts';
import type { PapersOptions } from './papers-command.ts';
import type { PlanOptions } from './plan-command.ts';
import type { ServeOptions } from './serve-command.ts';
import type { Streams } from './streams.ts';
import type { SupplyOptions } from './supply-command.ts';

/** Port of the bench unless another is asked for [-]. */
const PORT = 4370;

const STREAMS: Streams = {
  print: (text) => process.stdout.write(`${text}\n`),
  problem: (lines) => process.stderr.write(`${lines.join('\n')}\n`),
  progress: process.stderr.isTTY ? (text) => process.stderr.write(`\r\u001b[K${text}`) : undefined,
};

/** Runs the command line and gives the exit code: 0 for a plan, 3 for a refusal, 2 for bad input. */
export async function main(argv: readonly string[], streams: Streams = STREAMS): Promise<number> {
  for (const output of [process.stdout, process.stderr]) watchOutput(output, streams.problem);
  let code = 0;
  const program = commands(streams, (next) => {
    code = next;
  });
  try {
    await program.parseAsync([...argv]);
    return code;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? 0 : EXIT.badInput;
  }
}

/** Each command brings in what it needs itself: a plan does not wait for the server's libraries. */
function commands(streams: Streams, done: (code: number) => void): Command {
  const units = (): Option =>
    new Option('--units <system>', 'units to show').choices(['metric', 'inch']).default('metric');
  const kit = (): Option =>
    new Option('--kit <file>', 'kit file: power, leads, air and bay, whose margins the plan keeps');
  const program = new Command('furrow')
    .description('A bench for mechanised air carbon-arc gouging. Local codes and licensed practice govern.')
    .version(PROGRAM_VERSION)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => streams.print(text.trimEnd()),
      writeErr: (text) => streams.problem([text.trimEnd()]),
    });
  program
    .command('plan')
    .argument('<file>', 'job file, or - for standard input')
    .description('plan a job: passes, settings, what to expect and how surely')
    .option('--json', 'print the whole result as one JSON object', false)
    .addOption(units())
    .addOption(kit())
    .action(async (file: string, options: PlanOptions) => {
      const { planCommand } = await import('./plan-command.ts');
      done(await planCommand(file, options, streams));
    });
  program
    .command('card')
    .argument('<file>', 'job file, or - for standard input')
    .description('write the one-page set-up card as a PDF')
    .requiredOption('-o, --output <file>', 'PDF file to write')
    .addOption(units())
    .addOption(kit())
    .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
    .action(async (file: string, options: CardOptions) => {
      const { cardCommand } = await import('./card-command.ts');
      done(await cardCommand(file, options, streams));
    });
  program
    .command('supply')
    .argument('<file>', 'job file, or - for standard input')
    .description("tell what a kit's power, leads, air and bay make of the plan")
    .addOption(kit().makeOptionMandatory())
    .option('--json', 'print the supply part of the result as one JSON object', false)
    .addOption(units())
    .action(async (file: string, options: SupplyOptions) => {
      const { supplyCommand } = await import('./supply-command.ts');
      done(await supplyCommand(file, options, streams));
    });
  program
    .command('heat')
    .argument('<file>', 'job file, or - for standard input')
    .description('tell what the plan does to the plate: temperatures, cooling, hardness, preheat, skin')
    .addOption(kit())
    .option('--station <place>', 'place of the section from the start of the seam, such as "3 m"')
    .option('--quick', 'a coarse look in place of the refined answer', false)
    .option('--json', 'print the inputs and the heat report as one JSON object', false)
    .addOption(units())
    .action(async (file: string, options: HeatOptions) => {
      const { heatCommand } = await import('./heat-command.ts');
      done(await heatCommand(file, options, streams));
    });
  program
    .command('cost')
    .argument('<file>', 'job file, or - for standard input')
    .description('tell time and money of the whole job, refill included, and what changes would do')
    .option('--json', 'print the cost and the changes tried as one JSON object', false)
    .addOption(units())
    .addOption(kit())
    .action(async (file: string, options: CostCommandOptions) => {
      const { costCommand } = await import('./cost-command.ts');
      done(await costCommand(file, options, streams));
    });
  program
    .command('hazards')
    .argument('<file>', 'job file, or - for standard input')
    .description('tell what the job asks of the people around it: noise, fire zone, fume, field, shock')
    .option('--json', 'print the inputs and the hazard report as one JSON object', false)
    .addOption(units())
    .addOption(kit())
    .action(async (file: string, options: HazardsOptions) => {
      const { hazardsCommand } = await import('./hazards-command.ts');
      done(await hazardsCommand(file, options, streams));
    });
  program
    .command('papers')
    .argument('<file>', 'job file, or - for standard input')
    .description('write all papers of a job as PDF, and its drawings at full size as SVG and DXF')
    .requiredOption('-o, --output <folder>', 'folder to write them into')
    .option('--readings <file>', 'what was run and gauged, for run record and groove report')
    .option('--json', 'print what was written as one JSON object', false)
    .addOption(units())
    .addOption(kit())
    .addOption(new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4'))
    .action(async (file: string, options: PapersOptions) => {
      const { papersCommand } = await import('./papers-command.ts');
      done(await papersCommand(file, options, streams));
    });
  program
    .command('compare')
    .argument('<before>', 'job file as it was')
    .argument('<after>', 'job file as it is')
    .description('tell in words in what two revisions of a job differ')
    .option('--kits', 'compare two kit files in place of jobs', false)
    .option('--json', 'print the differences as one JSON object', false)
    .addOption(units())
    .action(async (before: string, after: string, options: CompareOptions) => {
      const { compareCommand } = await import('./compare-command.ts');
      done(await compareCommand(before, after, options, streams));
    });
  program
    .command('check-file')
    .argument('<file>', 'job file, or - for standard input')
    .description('check a job file without planning it')
    .action(async (file: string) => done(await checkCommand(file, streams)));
  program
    .command('check-kit')
    .argument('<file>', 'kit file, or - for standard input')
    .description('check a kit file')
    .action(async (file: string) => done(await checkKitCommand(file, streams)));
  program
    .command('schema')
    .description("print the job's JSON Schema, the kit's, or that of a readings file")
    .option('--kit', "the kit's in place of the job's", false)
    .option('--readings', "that of a readings file in place of the job's", false)
    .action(({ kit: ofKit, readings }: { readonly kit: boolean; readonly readings: boolean }) => {
      const schema = readings ? readingsJsonSchema() : ofKit ? kitJsonSchema() : jobJsonSchema();
      streams.print(JSON.stringify(schema, null, 2));
    });
  program
    .command('serve')
    .description('serve the bench in the browser, on this computer only')
    .option('--port <number>', 'port to listen on; 0 takes any free one', port, PORT)
    .option('--data <folder>', 'folder of the embedded database')
    .option('--database <url>', 'PostgreSQL database in place of the embedded one')
    .action(async (options: ServeOptions) => {
      const { serveCommand } = await import('./serve-command.ts');
      done(await serveCommand(options, streams));
    });
  return program;
}

function port(text: string): number {
  const value = Number(text);
  if (!/^\d{1,5}$/u.test(text) || value > 65_535)
    throw new InvalidArgumentError('A port is a whole number from 0 to 65535.');
  return value;
}

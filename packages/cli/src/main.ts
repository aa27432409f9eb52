import { PROGRAM_VERSION } from '@furrow/contract';
import { Command, CommanderError } from 'commander';
import { COMMANDS } from './commands/index.ts';
import { watchOutput } from './frame/closed-output.ts';
import type { CommandRecord, Told } from './frame/command.ts';
import { compileLess } from './frame/compile-less.ts';
import { EXIT } from './frame/exit-code.ts';
import type { Streams } from './frame/streams.ts';

const STREAMS: Streams = {
  print: (text) => process.stdout.write(`${text}\n`),
  problem: (lines) => process.stderr.write(`${lines.join('\n')}\n`),
  progress: process.stderr.isTTY ? (text) => process.stderr.write(`\r\u001b[K${text}`) : undefined,
};

/** Runs the command line and gives the exit code: 0 for a plan, 3 for a refusal, 2 for bad input. */
export async function main(argv: readonly string[], streams: Streams = STREAMS): Promise<number> {
  for (const output of [process.stdout, process.stderr]) watchOutput(output, streams.problem);
  let told: Told = { exit: EXIT.plan };
  const program = new Command('furrow')
    .description('A bench for mechanised air carbon-arc gouging. Local codes and licensed practice govern.')
    .version(PROGRAM_VERSION)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => streams.print(text.trimEnd()),
      writeErr: (text) => streams.problem([text.trimEnd()]),
    });
  for (const record of COMMANDS) {
    addCommand(program, record, async (args, options) => {
      if (record.lasts !== true) compileLess();
      const { run } = await record.load();
      told = await run(args, options as never, streams);
    });
  }
  try {
    await program.parseAsync([...argv]);
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.plan : EXIT.badInput;
  }
  if (told.problem !== undefined) streams.problem(told.problem);
  if (told.print !== undefined) streams.print(told.print);
  return told.exit;
}

function addCommand(
  program: Command,
  { name, description, args = {}, options = [] }: CommandRecord,
  call: (args: readonly string[], options: object) => Promise<void>,
): void {
  const command = program.command(name).description(description);
  for (const [argument, meaning] of Object.entries(args)) command.argument(`<${argument}>`, meaning);
  for (const option of options) command.addOption(option);
  command.action(() => call(command.args, command.opts()));
}

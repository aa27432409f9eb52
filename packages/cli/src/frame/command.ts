import type { Option } from 'commander';
import { EXIT } from './exit-code.ts';
import type { Streams } from './streams.ts';

/** What a command has to say in the end, and the exit code that says it to a calling program. */
export interface Told {
  readonly exit: number;
  /** Result, for standard output. */
  readonly print?: string;
  /** What stands in the way, a line each, for standard error. */
  readonly problem?: readonly string[];
}

/** What runs when a command is called: with its arguments, and its options as commander reads them. */
export type Run<Options> = (
  args: readonly string[],
  options: Options,
  streams: Streams,
) => Told | Promise<Told>;

/** A command of the program: what its help says, and where its code is. */
export interface CommandRecord {
  readonly name: string;
  readonly description: string;
  /** Meaning of each argument by its name. */
  readonly args?: Readonly<Record<string, string>>;
  readonly options?: readonly Option[];
  /** Whether it goes on until it is stopped; left out: it ends once it has told what was asked. */
  readonly lasts?: true;
  /** Brings in the code when the command is called, so that no command waits for what others need. */
  readonly load: () => Promise<{ readonly run: Run<never> }>;
}

/** Input that the command cannot work with. */
export function badInput(problem: readonly string[]): Told {
  return { exit: EXIT.badInput, problem };
}

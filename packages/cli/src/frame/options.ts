import { Option } from 'commander';

/** What the argument of most commands is. */
export const JOB_FILE = { file: 'job file, or - for standard input' } as const;

/** Options that several commands have, each made anew for the command that takes it. */
export const units = (): Option =>
  new Option('--units <system>', 'units to show').choices(['metric', 'inch']).default('metric');
export const kit = (): Option =>
  new Option('--kit <file>', 'kit file: power, leads, air and bay, whose margins the plan keeps');
export const knowledge = (): Option =>
  new Option(
    '--knowledge <file...>',
    'trials file of the shop, a summary of what shops have learned, or both: what the plan is made with',
  );
export const paper = (): Option =>
  new Option('--paper <size>', 'paper size').choices(['a4', 'letter']).default('a4');
export const data = (): Option => new Option('--data <folder>', 'folder of the embedded database');
export const database = (): Option =>
  new Option(
    '--database <url>',
    'PostgreSQL database in place of the embedded one; better in FURROW_DATABASE',
  );
export const json = (what: string): Option =>
  new Option('--json', `print ${what} as one JSON object`).default(false);
export const output = (flag: string, what: string): Option =>
  new Option(`-o, --output ${flag}`, what).makeOptionMandatory();

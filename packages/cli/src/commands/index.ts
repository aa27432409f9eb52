import { InvalidArgumentError, Option } from 'commander';
import type { CommandRecord } from '../frame/command.ts';
import { data, database, JOB_FILE, json, kit, knowledge, output, paper, units } from '../frame/options.ts';

/** Port of the bench unless another is asked for [-]. */
const PORT = 4370;

/** The commands of the program, in the order of its help. */
export const COMMANDS: readonly CommandRecord[] = [
  {
    name: 'plan',
    description: 'plan a job: passes, settings, what to expect and how surely',
    args: JOB_FILE,
    options: [json('the whole result'), units(), kit(), knowledge()],
    load: () => import('./plan.ts'),
  },
  {
    name: 'card',
    description: 'write the one-page set-up card as a PDF',
    args: JOB_FILE,
    options: [output('<file>', 'PDF file to write'), units(), kit(), knowledge(), paper()],
    load: () => import('./card.ts'),
  },
  {
    name: 'supply',
    description: "tell what a kit's power, leads, air and bay make of the plan",
    args: JOB_FILE,
    options: [kit().makeOptionMandatory(), json('the supply part of the result'), units(), knowledge()],
    load: () => import('./supply.ts'),
  },
  {
    name: 'commission',
    description: 'list the checks at the rig: the first time, every day (ten or fewer), or after a change',
    args: JOB_FILE,
    options: [
      kit().makeOptionMandatory(),
      new Option('--depth <depth>', 'how much is checked')
        .choices(['first', 'daily', 'change'])
        .default('first'),
      new Option('--changed <what...>', 'what was changed, with --depth change').choices([
        'seam',
        'electrode',
        'leads',
        'source',
        'air',
        'torch',
        'carriage',
        'gauge',
      ]),
      json('the round'),
      units(),
      knowledge(),
    ],
    load: () => import('./commission.ts'),
  },
  {
    name: 'heat',
    description: 'tell what the plan does to the plate: temperatures, cooling, hardness, preheat, skin',
    args: JOB_FILE,
    options: [
      kit(),
      new Option('--station <place>', 'place of the section from the start of the seam, such as "3 m"'),
      new Option('--quick', 'a coarse look in place of the refined answer').default(false),
      json('the inputs and the heat report'),
      units(),
      knowledge(),
    ],
    load: () => import('./heat.ts'),
  },
  {
    name: 'cost',
    description: 'tell time and money of the whole job, refill included, and what changes would do',
    args: JOB_FILE,
    options: [json('the cost and the changes tried'), units(), kit(), knowledge()],
    load: () => import('./cost.ts'),
  },
  {
    name: 'hazards',
    description: 'tell what the job asks of the people around it: noise, fire zone, fume, field, shock',
    args: JOB_FILE,
    options: [json('the inputs and the hazard report'), units(), kit(), knowledge()],
    load: () => import('./hazards.ts'),
  },
  {
    name: 'papers',
    description: 'write all papers of a job as PDF, and its drawings at full size as SVG and DXF',
    args: JOB_FILE,
    options: [
      output('<folder>', 'folder to write them into'),
      new Option('--readings <file>', 'what was run and gauged, for run record and groove report'),
      new Option('--gauge <file>', 'gauge file of the depths; the one that the readings file names without'),
      json('what was written'),
      units(),
      kit(),
      knowledge(),
      paper(),
    ],
    load: () => import('./papers.ts'),
  },
  {
    name: 'knowledge',
    description:
      'tell what a shop has learned from its trials and gauged jobs, and how its predictions fared',
    args: {
      'files...':
        'trials file, or - for standard input; or: export and a trials file, merge and summary files',
    },
    options: [
      json('what the shop knows'),
      units(),
      new Option('--next-trial <jobs...>', 'job files: the trial that teaches most per minute for them'),
      new Option('-o, --output <file>', 'file for the summary of export or merge; standard output without'),
    ],
    load: () => import('./knowledge.ts'),
  },
  {
    name: 'run',
    description:
      'review the log of a run: what happened where on the seam, how deep it should be, what to do',
    args: { file: 'log as the logger wrote it, or - for standard input' },
    options: [
      new Option('--job <file>', 'job that was run; the log is reviewed by itself without'),
      new Option('--as <file>', 'logger description by which the file is read; found out without'),
      json('the review'),
      units(),
      kit(),
      knowledge(),
    ],
    load: () => import('./run.ts'),
  },
  {
    name: 'rehearse',
    description: 'play a rig that runs the plan, with faults if wanted, and write its log as delimited text',
    args: JOB_FILE,
    options: [
      new Option(
        '--faults <list>',
        'faults to show, with place and duration if wanted: "arc_out@1.2 m:0.9 s, stall"; all for one of each',
      ).default(''),
      new Option('--seed <number>', 'seed of what is drawn').argParser(whole).default(1),
      new Option('--rate <number>', 'rows per second, 1 to 5000').argParser(rate).default(50),
      new Option('-o, --output <file>', 'file to write; standard output without'),
      units(),
      kit(),
      knowledge(),
    ],
    load: () => import('./rehearse.ts'),
  },
  {
    name: 'gather',
    description: 'take the readings of a run as they come; each is on disk before it is acknowledged',
    args: {
      source:
        '- for standard input, http://127.0.0.1:PORT to listen for newline JSON, mqtt://BROKER with --topic, modbus://HOST[:PORT][/UNIT] with --register',
    },
    options: [
      output('<file>', 'file to which the readings are added'),
      new Option('--topic <topic>', 'topic of the rig on the broker, without wildcards'),
      new Option('--client-id <name>', 'name under which the broker keeps what comes meanwhile'),
      new Option(
        '--register <register...>',
        'what a device keeps where: "voltage [V]=holding:0:uint16:0.1", as often as needed',
      ),
      new Option('--every <ms>', 'time between two readings of registers; 100 where none is given'),
      json('what was added'),
    ],
    lasts: true,
    load: () => import('./gather.ts'),
  },
  {
    name: 'survey',
    description: 'measure a groove from gauge tables, scans or clouds, and judge the seam of a job by them',
    args: {
      'files...':
        'gauge tables, scanned sections (x and z), points (XYZ, PLY), height maps (ASCII grid) or readings files',
    },
    options: [
      new Option(
        '--job <file>',
        'job file that the groove was cut for: verdict, where to measure next, recut',
      ),
      new Option('--run <file>', 'log of the run, whose depth the readings are fused with'),
      new Option(
        '--gauge <file>',
        "gauge file, whose study and checks tell the uncertainty of a reading; without, the one that a readings file names, else the job's",
      ),
      kit(),
      knowledge(),
      new Option('--unit <unit>', 'unit of lengths whose unit a file does not state').choices([
        'mm',
        'cm',
        'm',
        'in',
        'um',
      ]),
      new Option('--vertical <kind>', 'what a scan holds: heights, or ranges from the sensor').choices([
        'height',
        'range',
      ]),
      new Option('--station <place>', 'place of a single scan along the seam, such as "1.2 m"'),
      new Option(
        '--filter <cutoff>',
        'smooth profiles by the Gaussian filter of ISO 16610-21, such as "0.8 mm"',
      ),
      new Option(
        '--teach <file>',
        "trials file of the shop to which what was measured is added as a job's entry",
      ),
      new Option('-o, --output <folder>', 'folder for sections and depth curve as CSV, DXF and SVG'),
      json('sections, seam, verdicts and how the files were read'),
      units(),
    ],
    load: () => import('./survey.ts'),
  },
  {
    name: 'gauge',
    description: 'tell what a gauge is good for, by its study and its checks against a block',
    args: { file: 'gauge file, or - for standard input' },
    options: [json('study, checks and the uncertainty of one reading'), units()],
    load: () => import('./gauge.ts'),
  },
  {
    name: 'compare',
    description: 'tell in words in what two revisions of a job differ',
    args: { before: 'job file as it was', after: 'job file as it is' },
    options: [
      new Option('--kits', 'compare two kit files in place of jobs').default(false),
      json('the differences'),
      units(),
    ],
    load: () => import('./compare.ts'),
  },
  {
    name: 'check-file',
    description: 'check a job file without planning it',
    args: JOB_FILE,
    load: async () => ({ run: (await import('./check.ts')).job }),
  },
  {
    name: 'check-kit',
    description: 'check a kit file',
    args: { file: 'kit file, or - for standard input' },
    load: async () => ({ run: (await import('./check.ts')).kit }),
  },
  {
    name: 'schema',
    description: "print the job's JSON Schema, the kit's, that of another file, or of a result",
    options: [
      new Option('--kit', "the kit's in place of the job's").default(false),
      new Option('--readings', "that of a readings file in place of the job's").default(false),
      new Option('--trials', "that of a trials file in place of the job's").default(false),
      new Option('--summary', "that of a summary file in place of the job's").default(false),
      new Option('--gauge', "that of a gauge file in place of the job's").default(false),
      new Option('--logger', "that of a logger description in place of the job's").default(false),
      new Option('--result <command>', 'that of what a command prints with --json').choices([
        'plan',
        'supply',
        'commission',
        'heat',
        'cost',
        'hazards',
        'knowledge',
        'next-trial',
        'run',
        'survey',
        'gauge',
      ]),
    ],
    load: () => import('./schema.ts'),
  },
  {
    name: 'serve',
    description: 'serve the bench in the browser: on this computer only, or to people who sign in',
    options: [
      new Option('--port <number>', 'port to listen on; 0 takes any free one').argParser(port).default(PORT),
      new Option(
        '--accounts',
        'have people sign in; makes a one-time link for the first administrator',
      ).default(false),
      new Option(
        '--listen <ip>',
        'address of this computer to listen on, for others on the network; people sign in then',
      ),
      new Option('--address <url>', 'address that people open, such as https://bench.example'),
      new Option('--cert <file>', 'certificate of that address, PEM'),
      new Option('--key <file>', 'key of the certificate, PEM'),
      new Option(
        '--proxy <ip>',
        'address of the reverse proxy that holds the certificate in place of this program',
      ),
      new Option('--oidc <url>', 'issuer of an OpenID Connect provider that people may sign in by, https'),
      new Option(
        '--oidc-client <id>',
        'what the provider knows this program by; its secret in FURROW_OIDC_SECRET',
      ),
      new Option('--oidc-claim <name>', 'claim that is the name of an account').default('email'),
      new Option(
        '--monitor <port>',
        'port of this computer that tells health and metrics; none without',
      ).argParser(port),
      new Option('--log <form>', 'how trouble is told on standard error, and as json each request too')
        .choices(['text', 'json'])
        .default('text'),
      data(),
      database(),
    ],
    lasts: true,
    load: () => import('./serve.ts'),
  },
  {
    name: 'audit',
    description: 'hold the history of everything that is kept to its chain, and what is kept to the history',
    options: [
      new Option(
        '--since <file>',
        'what an earlier audit printed with --json: it must still be the beginning',
      ),
      json('where each history ends and what does not agree'),
      data(),
      database(),
    ],
    load: () => import('./audit.ts'),
  },
  {
    name: 'backup',
    description: 'write everything that is kept into one file, as it is at one moment, while others work',
    args: { file: 'file to write; none of that name may be there' },
    options: [data(), database()],
    load: () => import('./backup.ts'),
  },
  {
    name: 'restore',
    description: 'restore a backup into a place that keeps nothing yet, of either kind',
    args: { file: 'backup, as “furrow backup” wrote it' },
    options: [data(), database()],
    load: () => import('./restore.ts'),
  },
  {
    name: 'export',
    description: 'write everything that is kept as YAML, CSV, Parquet and PDF, for other programs',
    args: { folder: 'folder to write into, new or empty' },
    options: [
      new Option('--no-papers', 'leave out the papers, for which each job is planned anew'),
      data(),
      database(),
    ],
    load: () => import('./export.ts'),
  },
  {
    name: 'erase',
    description: 'erase a saved job for good, with its revisions, readings and papers handed out',
    args: { job: 'identifier of the saved job, as it stands in the address of its bench' },
    options: [
      new Option('--earlier', 'only the revisions before the newest').default(false),
      new Option(
        '--readings',
        'only what was read: at the rig, of the run and of the groove, with every revision and the files measured',
      ).default(false),
      new Option('--for-good', 'do it; without this word it is only told what would go').default(false),
      data(),
      database(),
    ],
    load: () => import('./erase.ts'),
  },
];

function port(text: string): number {
  const value = Number(text);
  if (!/^\d{1,5}$/u.test(text) || value > 65_535)
    throw new InvalidArgumentError('A port is a whole number from 0 to 65535.');
  return value;
}

function whole(text: string): number {
  const value = Number(text);
  if (!/^\d{1,9}$/u.test(text))
    throw new InvalidArgumentError('A seed is a whole number from 0 to 999999999.');
  return value;
}

function rate(text: string): number {
  const value = Number(text);
  if (!(value >= 1 && value <= 5000)) throw new InvalidArgumentError('Rows per second are from 1 to 5000.');
  return value;
}

import { type LiveSource, liveSourceSchema } from '@furrow/contract';
import { Refused } from '../guard/refused.ts';

/** The source of a live run as it was kept. */
export function liveSourceOf(text: string | null): LiveSource {
  return liveSourceSchema.parse(JSON.parse(text ?? '{}'));
}

/** Variables of the environment of the program. */
type Environment = Readonly<Record<string, string | undefined>>;

/** Refuses what no readings can be taken from. */
export function checkSource(source: LiveSource, environment: Environment): void {
  if (source.kind === 'mqtt') {
    const url = URL.canParse(source.url) ? new URL(source.url) : undefined;
    if (url?.password)
      throw new Refused(
        'RUN_SOURCE',
        'A password does not go into the address of a broker, where everybody could read it: set it as a variable of the environment of the program, such as FURROW_BROKER_BAY4, and name that variable.',
      );
    brokerUrl(source, environment);
    if (url?.hostname === '' || (url?.protocol !== 'mqtt:' && url?.protocol !== 'mqtts:'))
      throw new Refused('RUN_SOURCE', 'A broker is written as mqtt://broker:1883 or mqtts://broker:8883.');
    if (/[+#]/u.test(source.topic))
      throw new Refused(
        'RUN_SOURCE',
        `The topic “${source.topic.slice(0, 60)}” takes in more than one rig: name it without + and #.`,
      );
  }
  if (source.kind === 'modbus') {
    const names = source.registers.map(({ name }) => name);
    const twice = names.find((each, index) => names.indexOf(each) !== index);
    if (twice !== undefined)
      throw new Refused('RUN_SOURCE', `Two registers are called “${twice}”; each needs a name of its own.`);
  }
}

/** Address of a broker with the password of the variable that is named, or the refusal where it is not set. */
export function brokerUrl(
  { url: written, password_env: name }: Extract<LiveSource, { kind: 'mqtt' }>,
  environment: Environment,
): string {
  if (name === undefined) return written;
  const password = environment[name];
  if (password === undefined || password === '')
    throw new Refused(
      'RUN_SOURCE',
      `The program has no variable ${name} in its environment: start it with the password of the broker in it.`,
    );
  const url = new URL(written);
  url.password = encodeURIComponent(password);
  return url.href;
}

/** Where live readings come from, in words; never with a password. */
export function sourceWords(source: LiveSource): string {
  switch (source.kind) {
    case 'http':
      return 'newline JSON over HTTP';
    case 'mqtt':
      return `topic ${source.topic} of ${source.url.replace(/\/\/[^@/]*@/u, '//')}`;
    case 'modbus':
      return `registers of ${source.host}:${source.port}, unit ${source.unit}`;
    case 'rehearsal':
      return `a rig that is played, seed ${source.seed}`;
  }
}

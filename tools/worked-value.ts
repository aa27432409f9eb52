/** The value written behind `// =>` in a doc comment: JSON with bare keys, and `...` where digits or members are cut. */
export type WorkedValue =
  | { readonly kind: 'number'; readonly text: string; readonly cut: boolean }
  | { readonly kind: 'plain'; readonly value: string | boolean | null | undefined }
  | { readonly kind: 'list'; readonly items: readonly WorkedValue[]; readonly open: boolean }
  | { readonly kind: 'record'; readonly members: ReadonlyMap<string, WorkedValue>; readonly open: boolean };

const NUMERAL = /^[+-]?(?:Infinity|NaN|(?:\d+(?:\.(?!\.)\d*)?|\.\d+)(?:[eE][+-]?\d+)?)/;
const WORDS: Readonly<Record<string, boolean | null | undefined>> = {
  true: true,
  false: false,
  null: null,
  undefined: undefined,
};

/** Reads what is written; throws with the place where it stops being readable. */
export function readWorkedValue(text: string): WorkedValue {
  let at = 0;
  const rest = (): string => text.slice(at);
  const stop = (wanted: string): never => {
    throw new Error(`${wanted} expected at "${rest().slice(0, 30)}"`);
  };
  const skipSpace = (): void => {
    at += /^\s*/.exec(rest())![0].length;
  };
  const take = (token: string): boolean => {
    skipSpace();
    if (!rest().startsWith(token)) return false;
    at += token.length;
    return true;
  };

  function readString(): string {
    const quoted = /^"(?:[^"\\]|\\.)*"|^'(?:[^'\\]|\\.)*'/.exec(rest())?.[0] ?? stop('a closing quote');
    at += quoted.length;
    const inner = quoted.slice(1, -1);
    const json = quoted[0] === '"' ? inner : inner.replaceAll("\\'", "'").replace(/(?<!\\)"/g, '\\"');
    return JSON.parse(`"${json}"`) as string;
  }

  /** Members up to the closing bracket; true when a `...` says that there are more of them. */
  function readMembers(close: string, readMember: () => void): boolean {
    let open = false;
    while (!take(close)) {
      if (take('...')) open = true;
      else readMember();
      if (!take(',')) {
        if (!take(close)) stop(`, or ${close}`);
        return open;
      }
    }
    return open;
  }

  function readKey(): string {
    skipSpace();
    if (rest().startsWith('"') || rest().startsWith("'")) return readString();
    const key = /^[\w$]+/.exec(rest())?.[0] ?? stop('a key');
    at += key.length;
    return key;
  }

  function readValue(): WorkedValue {
    if (take('[')) {
      const items: WorkedValue[] = [];
      const open = readMembers(']', () => items.push(readValue()));
      return { kind: 'list', items, open };
    }
    if (take('{')) {
      const members = new Map<string, WorkedValue>();
      const open = readMembers('}', () => {
        const key = readKey();
        if (!take(':')) stop(':');
        members.set(key, readValue());
      });
      return { kind: 'record', members, open };
    }
    skipSpace();
    if (/^["']/.test(rest())) return { kind: 'plain', value: readString() };
    const numeral = NUMERAL.exec(rest())?.[0];
    if (numeral !== undefined) {
      at += numeral.length;
      const cut = rest().startsWith('...');
      if (cut) at += 3;
      return { kind: 'number', text: numeral, cut };
    }
    const word = /^\w+/.exec(rest())?.[0] ?? '';
    if (!Object.hasOwn(WORDS, word)) stop('a value');
    at += word.length;
    return { kind: 'plain', value: WORDS[word] };
  }

  const value = readValue();
  skipSpace();
  if (at < text.length) stop('the end');
  return value;
}

/** What one unit in the last digit written stands for. */
function lastDigit(numeral: string): number {
  const [mantissa = '', exponent = '0'] = numeral.toLowerCase().split('e');
  return 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
}

function sameNumber(text: string, cut: boolean, actual: number): boolean {
  const written = Number(text);
  if (!Number.isFinite(written)) return Object.is(written, actual);
  const rounding = 1e-12 * Math.max(Math.abs(written), Math.abs(actual));
  if (Math.abs(actual - written) <= rounding) return true;
  const digit = lastDigit(text);
  if (cut) {
    const beyond = (Math.abs(actual) - Math.abs(written)) / digit;
    return (
      (written === 0 || Math.sign(actual) === Math.sign(written)) && beyond >= -1e-9 && beyond < 1 - 1e-9
    );
  }
  // A whole number is meant as it stands; a fraction was rounded to the digits that are written.
  return text.includes('.') && Math.abs(actual - written) <= 0.5 * digit + rounding;
}

function show(value: unknown): string {
  if (typeof value === 'number' || value === undefined) return String(value);
  const text = JSON.stringify(value, (_key, inner: unknown) =>
    ArrayBuffer.isView(inner) ? [...(inner as Float64Array)] : inner,
  );
  return text === undefined ? String(value) : text.length > 300 ? `${text.slice(0, 300)} (cut)` : text;
}

/** The first difference between what is written and what came, with its path; undefined when there is none. */
export function workedDifference(wanted: WorkedValue, actual: unknown, path = ''): string | undefined {
  const differs = (told: string): string =>
    `${path === '' ? '' : `at ${path}: `}${told}, got ${show(actual)}`;
  switch (wanted.kind) {
    case 'number':
      return typeof actual === 'number' && sameNumber(wanted.text, wanted.cut, actual)
        ? undefined
        : differs(`${wanted.text}${wanted.cut ? '...' : ''} is written`);
    case 'plain':
      return wanted.value === actual ? undefined : differs(`${show(wanted.value)} is written`);
    case 'list': {
      if (!Array.isArray(actual) && !ArrayBuffer.isView(actual)) return differs('a list is written');
      const items = [...(actual as Iterable<unknown>)];
      if (wanted.open ? items.length < wanted.items.length : items.length !== wanted.items.length) {
        return differs(`a list of ${wanted.items.length}${wanted.open ? ' or more' : ''} is written`);
      }
      return firstDefined(wanted.items, (item, index) =>
        workedDifference(item, items[index], `${path}[${index}]`),
      );
    }
    case 'record': {
      if (typeof actual !== 'object' || actual === null || Array.isArray(actual))
        return differs('a record is written');
      const record = actual as Readonly<Record<string, unknown>>;
      const extra = Object.keys(record).find((key) => record[key] !== undefined && !wanted.members.has(key));
      if (!wanted.open && extra !== undefined) return differs(`no member ${extra} is written`);
      return firstDefined([...wanted.members], ([key, member]) =>
        workedDifference(member, record[key], path === '' ? key : `${path}.${key}`),
      );
    }
  }
}

function firstDefined<T>(
  list: readonly T[],
  test: (item: T, index: number) => string | undefined,
): string | undefined {
  for (const [index, item] of list.entries()) {
    const found = test(item, index);
    if (found !== undefined) return found;
  }
  return undefined;
}

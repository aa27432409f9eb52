import type { Limit, Verdict } from '../../limit/index.ts';
import { joinSentences, type Sentence } from '../../quantity/index.ts';
import type { Change, ElectricSetting, Way } from './electric-change.ts';

/** Ways told at most [-]. */
const TOLD_MOST = 3;

/** The verdict that a remedy is to bring about: what fails is to stand, what is tight is to have room. */
const MENDED: Readonly<Record<Verdict, readonly Verdict[]>> = {
  fails: ['tight', 'holds'],
  tight: ['holds'],
  holds: ['holds'],
};

/** What mends a limit of a setting by one change, in words, worked out when it is read. */
export type Remedies = (id: string, ways: readonly Way[]) => () => Sentence;

/**
 * Remedies of a setting: of each way, the least change that mends the limit and makes no hard limit fail that stood.
 * Each is tried, with all limits worked out anew, before it is named.
 */
export function remediesOf(
  setting: ElectricSetting,
  limitsAt: (setting: ElectricSetting) => readonly Limit[],
): Remedies {
  return (id, ways) => () => {
    const now = limitsAt(setting);
    const verdict = now.find((limit) => limit.id === id)?.verdict ?? 'fails';
    if (verdict === 'holds') return 'nothing: it holds';
    const failing = new Set(now.filter((limit) => limit.verdict === 'fails').map((limit) => limit.id));
    const mends = ({ setting: changed }: Change): boolean => {
      const after = limitsAt(changed);
      const own = after.find((limit) => limit.id === id);
      return (
        own !== undefined &&
        MENDED[verdict].includes(own.verdict) &&
        after.every((limit) => limit.verdict !== 'fails' || !limit.hard || failing.has(limit.id))
      );
    };
    const found = ways.flatMap((way) => leastOf(way.changes(setting), mends)?.says ?? []);
    if (found.length > 0) return joinSentences(found.slice(0, TOLD_MOST), ', or ');
    return `found no single change of ${listed(ways.map((way) => way.of))} that does`;
  };
}

/** Of what can be changed, the one that needs the least steps. */
function leastOf(
  choices: readonly (readonly Change[])[],
  mends: (change: Change) => boolean,
): Change | undefined {
  const mended = choices.flatMap((changes) => {
    const step = firstThat(changes, mends);
    return step === undefined ? [] : [{ step, change: changes[step]! }];
  });
  return mended.toSorted((a, b) => a.step - b.step)[0]?.change;
}

/** Place of the first change that mends where larger ones do too; undefined where the largest does not. */
function firstThat(changes: readonly Change[], mends: (change: Change) => boolean): number | undefined {
  const last = changes.at(-1);
  if (last === undefined || !mends(last)) return undefined;
  let [low, high] = [0, changes.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (mends(changes[middle]!)) high = middle;
    else low = middle + 1;
  }
  return high;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

import type { Issue } from '../issue/index.ts';
import type { Source } from '../limit/index.ts';
import type { Metal } from '../material/index.ts';
import type { Kit } from './kit-schema.ts';
import type { ReadKit } from './read-kit.ts';

/** The pole that the electrode is put on, and who says so. */
export interface ChosenPolarity {
  readonly polarity: Kit['polarity'];
  readonly source: Source;
  /** Where the kit states a pole that is not used on this metal: both sources; undefined where they agree. */
  readonly issue: Issue | undefined;
}

const WORDS: Readonly<Record<Kit['polarity'], string>> = {
  electrode_positive: 'electrode positive',
  electrode_negative: 'electrode negative',
};

/**
 * The polarity of a job with a kit, decided in this one place.
 *
 * What the kit states is taken; where it states nothing, what shops use on the metal. A stated pole that is not used on
 * the metal is an issue that names both.
 *
 * @param read - the kit as read [record], from `readKit`
 * @param metal - the metal of the plate [record], from `metalOf`
 * @returns polarity, source and issue [record]
 * @source the kit; the advice on the metal
 * @example
 * polarityOf({ kit: { polarity: 'electrode_positive' }, defaultsUsed: [{ path: 'polarity' }] }, { title: 'Copper', poles: ['electrode_negative'], polarity: { text: 'x', source: 'y', provenance: 'common practice' } }).polarity // => "electrode_negative"
 */
export function polarityOf({ kit, defaultsUsed }: ReadKit, metal: Metal): ChosenPolarity {
  const advice: Source = {
    text: `${metal.title.toLowerCase()}: ${metal.polarity.text} (${metal.polarity.source})`,
    provenance: metal.polarity.provenance,
  };
  const usual = metal.poles[0]!;
  if (defaultsUsed.some(({ path }) => path === 'polarity'))
    return { polarity: usual, source: advice, issue: undefined };
  const stated: ChosenPolarity = {
    polarity: kit.polarity,
    source: { text: 'the kit', provenance: 'job file' },
    issue: undefined,
  };
  if (metal.poles.includes(kit.polarity)) return stated;
  const issue: Issue = {
    code: 'KIT_COMBINATION',
    path: 'polarity',
    message: `The kit states ${WORDS[kit.polarity]}; on ${advice.text} Decide which holds before the leads are connected.`,
    read: kit.polarity,
    accepted: metal.poles.join(', '),
    nearest: usual,
  };
  return { ...stated, issue };
}

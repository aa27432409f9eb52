import type { Amount } from './amount.ts';
import { formatAmount, formatApart } from './format-amount.ts';
import { formatBound, formatReadOff } from './format-bound.ts';
import type { QuantityKind, UnitSystem } from './quantity-kind.ts';

/**
 * Words for a person. Where amounts stand among them, they are kept in SI until the reader's units are known; in JSON a
 * sentence is its text.
 */
export type Sentence = string | { readonly say: readonly (string | Amount)[] };

type Part = string | number | Amount | Sentence;

function partsOf(part: Part): readonly (string | Amount)[] {
  if (typeof part === 'object') return 'say' in part ? part.say : [part];
  return [String(part)];
}

function joined(parts: readonly (string | Amount)[]): Sentence {
  const say: (string | Amount)[] = [];
  for (const part of parts) {
    const last = say.at(-1);
    if (part === '') continue;
    if (typeof part === 'string' && typeof last === 'string') say[say.length - 1] = last + part;
    else say.push(part);
  }
  if (say.every((part) => typeof part === 'string')) return say.join('');
  return { say };
}

/**
 * Makes a sentence from a template whose holes are amounts, other sentences, words or counts.
 *
 * @param words - the template's own words [list], as a tag is called with them
 * @param parts - what stands in its holes [list], amounts in SI
 * @returns the sentence, its amounts still in SI [sentence]
 * @source none: bookkeeping
 * @example
 * sentenceText(say`Mark ${amountOf(0.5, 'length')} along the seam.`, 'metric') // => "Mark 500 mm along the seam."
 */
export function say(words: TemplateStringsArray, ...parts: readonly Part[]): Sentence {
  return joined(
    words.flatMap((word, index) => [word, ...(index < parts.length ? partsOf(parts[index]!) : [])]),
  );
}

/**
 * Puts sentences one after the other.
 *
 * @param sentences - the sentences [list], any
 * @param between - what stands between two of them [text], any
 * @returns one sentence [sentence]
 * @source none: bookkeeping
 * @example
 * sentenceText(joinSentences(['Stop.', say`Wait ${amountOf(120, 'time')}.`]), 'metric') // => "Stop. Wait 2 min."
 */
export function joinSentences(sentences: readonly Sentence[], between = ' '): Sentence {
  return joined(sentences.flatMap((each, index) => [index === 0 ? '' : between, ...partsOf(each)]));
}

/**
 * A sentence with a great letter at its start, where it starts with words.
 *
 * @param sentence - the sentence [sentence], any
 * @returns the same with its first letter great [sentence]
 * @source none: bookkeeping
 * @example
 * sentenceText(capitalised(say`wait ${amountOf(120, 'time')}`), 'metric') // => "Wait 2 min"
 */
export function capitalised(sentence: Sentence): Sentence {
  const [first, ...rest] = partsOf(sentence);
  return typeof first === 'string'
    ? joined([first.charAt(0).toUpperCase() + first.slice(1), ...rest])
    : sentence;
}

/** Whose units a sentence is written in; `both` where it is not known who reads it. */
export type Reader = UnitSystem | 'both';

/**
 * Writes a sentence in the reader's units.
 *
 * @param sentence - the sentence [sentence], amounts finite
 * @param reader - units to write [text], inch or metric, or both where it is not known who reads
 * @returns the words [text]
 * @source none: bookkeeping
 * @example
 * sentenceText(say`at ${amountOf(620528, 'pressure')}`, 'inch') // => "at 90 psi"
 * sentenceText(say`at ${amountOf(620528, 'pressure')}`, 'both') // => "at 6.2 bar (90 psi)"
 */
export function sentenceText(sentence: Sentence, reader: Reader): string {
  return partsOf(sentence)
    .map((part) => (typeof part === 'string' ? part : amountFor(part, reader)))
    .join('');
}

function amountFor(amount: Amount, reader: Reader): string {
  if (reader !== 'both') return amountText(amount, reader);
  const [metric, inch] = [amountText(amount, 'metric'), amountText(amount, 'inch')];
  return metric === inch ? metric : `${metric} (${inch})`;
}

/**
 * Writes an amount in the reader's units, or on the scale that it is read on.
 *
 * @param amount - the amount [record], its value finite
 * @param system - units to write [text], inch or metric
 * @returns amount with its unit [text]
 * @source none: bookkeeping
 * @example
 * amountText({ value: 620528, kind: 'pressure' }, 'inch') // => "90 psi"
 * amountText({ value: 0.45, kind: 'voltage', scale: { unit: 'mV', decimals: 1 } }, 'inch') // => "450.0 mV"
 */
export function amountText(
  { value, kind, beside, bound, readOff, scale }: Amount,
  system: UnitSystem,
): string {
  // only what documents may state is given a bound
  if (bound !== undefined)
    return (readOff ? formatReadOff : formatBound)(value, kind as QuantityKind, system, bound);
  return beside === undefined
    ? formatAmount(value, kind, system, scale)
    : formatApart(value, beside, kind, system, scale)[0];
}

/** A result whose sentences are written out: where it had a sentence it has a text. */
export type Written<Result> = Result extends { readonly say: readonly (string | Amount)[] }
  ? string
  : Result extends string | number | boolean | null | undefined | ArrayBufferView
    ? Result
    : Result extends readonly (infer Item)[]
      ? readonly Written<Item>[]
      : { readonly [Key in keyof Result]: Written<Result[Key]> };

function isSentence(value: object): value is Exclude<Sentence, string> {
  return 'say' in value && Array.isArray(value.say) && Object.keys(value).length === 1;
}

/**
 * A result with each of its sentences written out, as JSON for other programs has it.
 *
 * @param value - the result [record], plain data
 * @param reader - units to write [text], inch or metric, or both where it is not known who reads
 * @returns a copy whose sentences are texts [record]
 * @source none: bookkeeping
 * @example
 * sentencesWritten({ remedy: say`${amountOf(0.5, 'length')} less` }, 'metric') // => {"remedy":"500 mm less"}
 */
export function sentencesWritten<Result>(value: Result, reader: Reader): Written<Result> {
  return written(value, reader) as Written<Result>;
}

function written(value: unknown, reader: Reader): unknown {
  if (Array.isArray(value)) return value.map((each) => written(each, reader));
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value;
  if (isSentence(value)) return sentenceText(value, reader);
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, written(each, reader)]));
}

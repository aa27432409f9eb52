/** What was seen or read: it is so or not, or it lies low, in or high of its band. */
export type FaultOutcome = 'yes' | 'no' | 'low' | 'in' | 'high';

/** Chance of yes, where the answer is yes or no. */
export interface YesChance {
  /** Chance that it is so [-]. */
  readonly yes: number;
}

/** Chances of lying outside a band; the rest lies in it. */
export interface ReadingChance {
  /** Chance of lying below the band [-]. */
  readonly low: number;
  /** Chance of lying above the band [-]. */
  readonly high: number;
}

/** Chances of the outcomes of one observable. */
export type OutcomeChance = YesChance | ReadingChance;

/** Something that can be seen, looked at or read, and what it shows when no cause speaks for it. */
export interface FaultObservable {
  /** Identifier, such as `flowing_pressure`. */
  readonly id: string;
  /** `symptom`: seen in the run; `inspection`: looked at; `reading`: read off against a band. */
  readonly kind: 'symptom' | 'inspection' | 'reading';
  /** What it is, in words that fit behind "there was" or "the reading of". */
  readonly title: string;
  /** What to do or to answer. */
  readonly ask: string;
  /** Time it takes one person, walking there and power off included [min]. */
  readonly minutes: number;
  /** Chances under a cause that does not bear on it. */
  readonly otherwise: OutcomeChance;
}

/** A cause of trouble, how often it is the one, and what it does to the observables it bears on. */
export interface FaultCause {
  /** Identifier, such as `loose_joint`. */
  readonly id: string;
  readonly title: string;
  /** How the cause makes what is seen, in words. */
  readonly mechanism: string;
  readonly remedy: string;
  /** How often this is the cause, relative to the others; the weights need not sum to 1 [-]. */
  readonly weight: number;
  /** Chances by identifier of the observable; others keep theirs. */
  readonly shows: Readonly<Record<string, OutcomeChance>>;
}

/** Causes, what they show, and how much the judgement behind the numbers weighs against a shop's counts. */
export interface FaultModel {
  readonly observables: readonly FaultObservable[];
  readonly causes: readonly FaultCause[];
  /** The weights of the causes count as this many cases [-]. */
  readonly weight_cases: number;
  /** Each row of chances counts as this many cases [-]. */
  readonly chance_cases: number;
  /** Where the numbers come from. */
  readonly source: string;
}

/** What was seen so far, by identifier of the observable; what is unknown may be left out. */
export type FaultEvidence = Readonly<Partial<Record<string, FaultOutcome | 'unknown'>>>;

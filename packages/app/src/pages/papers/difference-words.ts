import { jobDifference, readJob, type UnitSystem } from '@furrow/engine';

/** In what two texts of a job differ, in words; a draft cannot be compared. */
export function differenceWords(before: string, after: string, units: UnitSystem): readonly string[] {
  const [was, is] = [readJob(before), readJob(after)];
  if (!was.ok || !is.ok) return ['One of the two is a draft with mistakes, so they cannot be compared.'];
  const words = jobDifference(was.value, is.value, units).map((difference) => difference.words);
  return words.length === 0 ? ['Nothing differs but the writing.'] : words;
}

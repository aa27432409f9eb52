import { fromUnit } from '../quantity/index.ts';
import type { BreachOutcome, CrewOutcome, FumeOutcome, SectionOutcome } from './outcome.ts';
import { breaksRule } from './wording.ts';

/** A concentration [mg/m3] in SI; null where there is none. */
function concentration(value: number | null): number | null {
  return value === null ? null : fromUnit(value, 'mg/m3');
}

/** Everything that is over or short of a figure named, so that it can stand first; the crews' noise, which breaks most rules, comes last. */
export function hazardBreaches(
  noise: readonly CrewOutcome[],
  sections: readonly SectionOutcome[],
  fume: FumeOutcome,
): readonly BreachOutcome[] {
  const all: readonly BreachOutcome[] = [
    ...sections.flatMap(({ title, rows }) => rows.map((row) => ({ ...row, of: title }))),
    ...fume.substances.flatMap(({ name, limits, measured: mean, highest }) =>
      limits.map(({ set, most, ceiling, verdict }) => ({
        of: 'Fume and gas',
        rule: `${name}, ${set}`,
        value: concentration(ceiling ? highest : mean),
        figure: concentration(most),
        unit: 'mg/m3' as const,
        sense: 'most' as const,
        verdict,
      })),
    ),
    ...fume.mixtures.map(({ set, index, verdict }) => ({
      of: 'Fume and gas',
      rule: `Additive index, ${set}`,
      value: index,
      figure: 1,
      unit: '-' as const,
      sense: 'most' as const,
      verdict,
    })),
    ...noise.flatMap(({ name, rows }) => rows.map((row) => ({ ...row, of: `Noise, ${name}` }))),
  ];
  return all
    .filter(({ verdict }) => breaksRule(verdict))
    .map(({ of, rule, value, figure, unit, sense, verdict }) => ({
      of,
      rule,
      value,
      figure,
      unit,
      sense,
      verdict,
    }));
}

import { breaksRule } from '../hazard/index.ts';
import type { CrewNoiseReport, FumeReport, HazardBreach, HazardSection } from '../result/index.ts';

/** Everything that is over or short of a figure named, so that it can stand first; the crews' noise, which breaks most rules, comes last. */
export function hazardBreaches(
  noise: readonly CrewNoiseReport[],
  sections: readonly HazardSection[],
  fume: FumeReport,
): readonly HazardBreach[] {
  const all: readonly HazardBreach[] = [
    ...sections.flatMap(({ title, rows }) => rows.map((row) => ({ ...row, of: title }))),
    ...fume.substances.flatMap(({ name, limits, measured_mg_per_m3: mean, highest_mg_per_m3: highest }) =>
      limits.map(({ set, most_mg_per_m3: figure, ceiling, verdict }) => ({
        of: 'Fume and gas',
        rule: `${name}, ${set}`,
        value: ceiling ? highest : mean,
        figure,
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

import type { RunTotals } from './outcome.ts';

/** Sums over passes; what one of them lacks, all lack. */
export function totalsOf(passes: readonly RunTotals[]): RunTotals {
  const sum = (pick: (totals: RunTotals) => number | undefined): number | undefined => {
    let total = 0;
    for (const each of passes) {
      const value = pick(each);
      if (value === undefined) return undefined;
      total += value;
    }
    return passes.length === 0 ? undefined : total;
  };
  const mean = (pick: (totals: RunTotals) => number | undefined): number | undefined => {
    const weighted = sum((each) => {
      const value = pick(each);
      return value === undefined ? undefined : value * each.arcTime;
    });
    const time = sum(({ arcTime }) => arcTime);
    return weighted === undefined || time === undefined || time === 0 ? undefined : weighted / time;
  };
  return {
    arcTime: sum(({ arcTime }) => arcTime) ?? 0,
    arcOutTime: sum(({ arcOutTime }) => arcOutTime) ?? 0,
    voltage: mean(({ voltage }) => voltage),
    current: mean(({ current }) => current),
    energy: sum(({ energy }) => energy),
    charge: sum(({ charge }) => charge),
    fed: sum(({ fed }) => fed),
    travelled: sum(({ travelled }) => travelled),
    gouged: sum(({ gouged }) => gouged),
  };
}

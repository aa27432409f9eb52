const INTERVAL =
  /(?:interval|period|sample time|sampling time|time step|delta ?t|\bdt\b|[Δ]t|takt|abtastzeit|abstand|periode|intervalle|intervalo)[^\d\n]{0,24}(\d+(?:[.,]\d+)?(?:e[-+]?\d+)?)\s*(ms|µs|us|s|sec|sek|min)\b/iu;
const RATE =
  /(?:rate|frequency|frequenz|fréquence|frecuencia|abtastrate|scan|sampl)[^\d\n]{0,24}(\d+(?:[.,]\d+)?(?:e[-+]?\d+)?)\s*(k?hz|1\/s|s\/s|samples\/s|sps)\b/iu;
const SECONDS: Readonly<Record<string, number>> = { ms: 1e-3, us: 1e-6, µs: 1e-6, min: 60 };

/** Time between two rows as the lines before a table say it [s]; undefined where they do not. */
export function intervalOf(preamble: readonly string[]): number | undefined {
  for (const line of preamble) {
    const interval = INTERVAL.exec(line);
    if (interval) {
      const value = Number(interval[1]!.replace(',', '.')) * (SECONDS[interval[2]!.toLowerCase()] ?? 1);
      if (value > 0) return value;
    }
    const rate = RATE.exec(line);
    if (rate) {
      const value = Number(rate[1]!.replace(',', '.')) * (rate[2]!.toLowerCase() === 'khz' ? 1000 : 1);
      if (value > 0) return 1 / value;
    }
  }
  return undefined;
}

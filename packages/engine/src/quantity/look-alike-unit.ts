import type { Outcome } from '../issue/index.ts';
import { figures, refuse } from './amount-issue.ts';
import { findUnit, unitNamed } from './find-unit.ts';
import type { QuantityKind } from './quantity-kind.ts';

const STANDARD_ATMOSPHERE = 101325;

/** `psia`, `bar(a)`, `kPa abs`: the gauge unit inside, if the text is an absolute pressure. */
function absoluteOf(unit: string): string | undefined {
  const found = /^(psi|bar|mbar|kpa|mpa|pa) ?(?:a|\(a\)|\(?abs\.?\)?|\(?absolute\)?)$/i.exec(unit);
  return found?.[1];
}

/** Units that look usable and would mislead; each is refused with what to write instead. */
export function refuseLookAlike(
  text: string,
  unit: string,
  value: number,
  kind: QuantityKind,
): Outcome<never> | undefined {
  const gaugeSpelling = kind === 'pressure' ? absoluteOf(unit) : undefined;
  if (gaugeSpelling !== undefined) {
    const gauge = findUnit(gaugeSpelling) ?? unitNamed(gaugeSpelling.toLowerCase() === 'mpa' ? 'MPa' : 'bar');
    const reading = gauge.scale.fromSi(gauge.scale.toSi(value) - STANDARD_ATMOSPHERE);
    const nearest = `${figures(reading, 4)} ${gauge.name}`;
    const message = `"${text}" is an absolute pressure; a gauge reading, which is counted from the air around, is wanted. At sea level that is "${nearest}".`;
    return refuse('AMOUNT_KIND', text, kind, message, nearest);
  }
  if (kind === 'air_flow' && /^acfm$/i.test(unit)) {
    const message = `"${text}" counts the air as squeezed in the line; free air, as a compressor's plate gives it, is wanted: write it in scfm or L/min.`;
    return refuse('AMOUNT_KIND', text, kind, message);
  }
  if (kind === 'temperature' && findUnit(unit)?.name === 'deg') {
    const forms = [`${figures(value)} °C`, `${figures(value)} °F`];
    const message = `"${text}" does not say which degrees: write "${forms[0]}" or "${forms[1]}".`;
    return refuse('AMOUNT_AMBIGUOUS', text, kind, message, forms[0]);
  }
  return undefined;
}

import type { Issue, IssueCode, Outcome } from '../issue/index.ts';
import { KIND_NAMES, type QuantityKind } from './quantity-kind.ts';

/** Amounts of each kind as a shop would write them: what to offer and what to show. */
export const WRITTEN_EXAMPLES: Readonly<Record<QuantityKind, readonly [string, ...string[]]>> = {
  length: ['9.5 mm', '3/8 in', '0.375"', '6 ft'],
  speed: ['710 mm/min', '28 in/min', '12 mm/s'],
  pressure: ['6.2 bar', '90 psi', '620 kPa'],
  current: ['850 A', '1.2 kA'],
  voltage: ['42 V'],
  time: ['30 s', '2 min', '1 h'],
  angle: ['45 deg', '45°'],
  area: ['95 mm2', '4/0 AWG', '500 kcmil'],
  temperature: ['20 °C', '68 °F'],
  air_flow: ['600 L/min', '20 scfm'],
  power: ['15 kW', '20 hp'],
  share: ['95 %', '0.95'],
  volume: ['500 L', '130 gal'],
  resistance: ['0.2 mohm', '35 mV/A'],
};

/** A refused amount. The path is left empty: whoever knows the document fills it in. */
export function refuse(
  code: IssueCode,
  read: string,
  kind: QuantityKind,
  message: string,
  nearest?: string,
): Outcome<never> {
  const accepted = `${KIND_NAMES[kind]}, such as ${WRITTEN_EXAMPLES[kind].join(', ')}`;
  const issue: Issue = { code, message, path: '', read, accepted };
  return { ok: false, issues: [nearest === undefined ? issue : { ...issue, nearest }] };
}

/** A number as text with the figures that matter, for messages. */
export function figures(value: number, digits = 12): string {
  return String(Number(value.toPrecision(digits)));
}

import type { QuantityKind } from '../quantity/index.ts';
import { type ColumnUnit, readColumnUnit } from './column-unit.ts';

/** What a column can hold that Furrow has a use for. */
export type ColumnQuantity =
  | 'time'
  | 'date'
  | 'voltage'
  | 'current'
  | 'travel'
  | 'position'
  | 'feed'
  | 'air_pressure'
  | 'air_flow'
  | 'station'
  | 'depth'
  | 'width'
  | 'radius'
  | 'x'
  | 'y'
  | 'z';

/** The kind of each; a date has none. */
export const KIND_OF_QUANTITY: Readonly<Record<ColumnQuantity, QuantityKind | undefined>> = {
  time: 'time',
  date: undefined,
  voltage: 'voltage',
  current: 'current',
  travel: 'speed',
  position: 'length',
  feed: 'speed',
  air_pressure: 'pressure',
  air_flow: 'air_flow',
  station: 'length',
  depth: 'length',
  width: 'length',
  radius: 'length',
  x: 'length',
  y: 'length',
  z: 'length',
};

/** All of them, for schemas and forms. */
export const COLUMN_QUANTITIES = Object.keys(KIND_OF_QUANTITY) as [ColumnQuantity, ...ColumnQuantity[]];

/** What a kind is taken for where the name says nothing. */
const BY_KIND: Partial<Record<QuantityKind, ColumnQuantity>> = {
  time: 'time',
  voltage: 'voltage',
  current: 'current',
  speed: 'travel',
  pressure: 'air_pressure',
  air_flow: 'air_flow',
};

/**
 * Names of the trade in the languages that loggers are met in, on lower-case words without accents. The first that fits
 * and whose kind agrees with the unit is taken.
 */
const NAMES: readonly (readonly [ColumnQuantity, RegExp])[] = [
  ['date', /^(?:date|datum|fecha|data)$/],
  [
    'feed',
    /\b(?:wire|electrode|rod|carbon|draht|elektroden?|stab|fil|electrodo)\b.*\b(?:feed|speed|vorschub|avance|velocidad|vitesse)|(?:draht|elektroden)vorschub|\b(?:feed|feeder|feedrate|wfs|devidage|alimentacion|alimentazione)\b/,
  ],
  [
    'time',
    /\b(?:time|times|timestamp|ts|elapsed|t|zeit|zeitstempel|uhrzeit|laufzeit|temps|heure|horodatage|tiempo|hora|tempo|ora|tijd|tid|czas|date time|datetime|datum zeit|epoch|clock|seconds|millis)\b/,
  ],
  [
    'voltage',
    /\b(?:voltage|volts?|spannung|lichtbogenspannung|bogenspannung|schweissspannung|tension|voltaje|tensao|tensione|spanning|spanning|napiecie|u|uarc|ua|varc|v arc|arc v|u arc)\b/,
  ],
  [
    'current',
    /\b(?:current|amps?|amperage|amperes?|strom|stromstarke|schweissstrom|lichtbogenstrom|courant|intensite|corriente|intensidad|corrente|stroom|prad|i|iarc|i arc|arc i|arc a)\b/,
  ],
  [
    'travel',
    /\b(?:travel|speed|carriage|tractor|velocity|geschwindigkeit|fahrgeschwindigkeit|schweissgeschwindigkeit|vorschub|vorschubgeschwindigkeit|vitesse|avance|velocidad|velocita|snelheid|v|vf|vtravel)\b/,
  ],
  [
    'position',
    /\b(?:position|pos|distance|dist|travelled|travel|encoder|rail|weg|wegstrecke|strecke|odometer|posicion|posizione|positie|distancia|course|chemin|s|path|location|mileage)\b/,
  ],
  [
    'air_flow',
    /\b(?:flow|air ?flow|gas ?flow|durchfluss|luftmenge|luftstrom|volumenstrom|debit|caudal|portata|debiet|q|consumption|verbrauch)\b/,
  ],
  [
    'air_pressure',
    /\b(?:pressure|press|air|druck|luftdruck|luft|pression|presion|pressione|persluchtdruk|perslucht|p|air pressure)\b/,
  ],
  [
    'station',
    /\b(?:station|sta|messstelle|messpunkt|stelle|point|punkt|repere|chainage|estacion|stazione)\b/,
  ],
  ['depth', /\b(?:depth|tiefe|profondeur|profundidad|profondita|diepte|h|d)\b/],
  ['width', /\b(?:width|breite|largeur|ancho|anchura|larghezza|breedte|w|b)\b/],
  ['radius', /\b(?:radius|root ?radius|rayon|radio|raggio|r)\b/],
  ['x', /^(?:x|x ?(?:pos|position|coord|coordinate|achse|axis)?)$/],
  ['y', /^(?:y|y ?(?:pos|position|coord|coordinate|achse|axis)?)$/],
  [
    'z',
    /^(?:z|z ?(?:pos|position|coord|coordinate|achse|axis|value)?|height|hohe|hauteur|altura|range|elevation)$/,
  ],
];

/** Words that say that a column is not what was measured. */
const NOT_MEASURED =
  /\b(?:set|setpoint|soll|sollwert|preset|target|consigne|nominal|ref|reference|limit|max|std|dev|stdev|sigma|ocv|mains|primary|netz|offset|alarm)\b/;

/** Words that say that it is. */
const MEASURED = /\b(?:arc|actual|act|ist|istwert|meas|measured|mean|avg|lichtbogen|reel|mesure)\b/;

/** Units of one letter that are as often the name of a channel. */
const ONE_LETTER = /^[A-Za-z]$/;

/** Units that stand as the name of a column. */
const UNIT_AS_NAME =
  /^(?:V|A|(?:[kK]A|m[vV]|psi|PSI|[bB]ar|BAR|mbar|MPa|kPa|s|sec|Sec|ms|us|mm\/min|cm\/min|in\/min|ipm|IPM|[lL]\/min|s?cfm|S?CFM|[vV]olts?|[aA]mps?))$/;

/** A header cell, taken apart. */
export interface ColumnHeading {
  /** The header cell as written, without spaces around it. */
  readonly name: string;
  readonly quantity: ColumnQuantity | undefined;
  readonly unit: ColumnUnit | undefined;
  /** How much speaks for the quantity, 0 to 1 [-]; the better one of two columns of a quantity is used. */
  readonly weight: number;
  /** Why, in words. */
  readonly says: string;
}

/** Lower-case words without accents and signs. */
function plainWords(name: string): string {
  return name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/gu, 'ss')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

interface NameAndUnit {
  readonly name: string;
  readonly unit: ColumnUnit | undefined;
  /** Whether the unit could as well be part of the name. */
  readonly loose: boolean;
}

/** Parts the unit from a header such as `U [V]`, `I/A`, `Travel cm/min`, `air_pressure_kPa`, `Arc voltage (0.1 V)`. */
function partUnit(header: string): NameAndUnit {
  for (const bracket of header.matchAll(/[[({<]([^\])}>]*)[\])}>]/gu)) {
    const unit = readColumnUnit(bracket[1]!);
    if (unit)
      return {
        name: header
          .replace(bracket[0], ' ')
          .replace(/[/,:;\s]+$/u, '')
          .trim(),
        unit,
        loose: false,
      };
  }
  const whole = UNIT_AS_NAME.test(header) || /[\s\d]/u.test(header) ? readColumnUnit(header) : undefined;
  if (whole) return { name: '', unit: whole, loose: false };
  const pieces = header.split(/(?<=\S)(?:[\s_-]+|\.(?!\d))(?=\S)/u);
  for (let from = 1; from < pieces.length; from += 1) {
    const written = pieces.slice(from).join('_').replace(/_per_/giu, '/');
    const unit =
      readColumnUnit(written) ??
      readColumnUnit(written.replaceAll('_', '/')) ??
      readColumnUnit(written.replaceAll('_', ' '));
    if (!unit) continue;
    const name = pieces.slice(0, from).join(' ');
    const parted = name.replace(/(?:\s+in|\s*[/,:])$/iu, '');
    return { name: parted, unit, loose: parted === name && ONE_LETTER.test(written) };
  }
  const parts = /^([^/,]+?)\s*[/,:]\s*(.+)$/u.exec(header);
  const unit = parts ? readColumnUnit(parts[2]!) : undefined;
  return unit ? { name: parts![1]!, unit, loose: false } : { name: header, unit: undefined, loose: false };
}

/** Reads what a column is by its header and, where there is one, the cell of the unit row. */
export function readHeading(header: string, unitCell = ''): ColumnHeading {
  const name = header.trim().replace(/\s+/gu, ' ');
  const own = partUnit(name);
  const below = readColumnUnit(unitCell);
  const unit = below ?? own.unit;
  const words = plainWords(below && !own.unit ? name : own.name);
  const written =
    unit === undefined ? '' : below ? ` and the unit row says ${unit.name}` : ` in ${unit.name}`;
  const named = NAMES.filter(([, pattern]) => pattern.test(words)).map(([quantity]) => quantity);
  const fitting = named.filter((quantity) => unit === undefined || KIND_OF_QUANTITY[quantity] === unit.kind);
  const share = NOT_MEASURED.test(words) ? 0.5 : MEASURED.test(words) ? 1 : 0.95;
  const [first] = fitting;
  if (first !== undefined) {
    return { name, quantity: first, unit, weight: share, says: `"${name}"${written}` };
  }
  const byUnit = unit && !own.loose ? BY_KIND[unit.kind] : undefined;
  if (named.length === 0 && byUnit !== undefined) {
    return {
      name,
      quantity: byUnit,
      unit,
      weight: 0.6 * share,
      says: `"${name}"${written}, which only fits`,
    };
  }
  if (named.length > 0 && unit !== undefined && !own.loose) {
    return {
      name,
      quantity: undefined,
      unit,
      weight: 0,
      says: `"${name}" is called after ${named[0]} but is in ${unit.name}`,
    };
  }
  if (own.loose) {
    const loose = NAMES.find(([, pattern]) => pattern.test(plainWords(name)))?.[0];
    return { name, quantity: loose, unit: undefined, weight: 0.8 * share, says: `"${name}"` };
  }
  return {
    name,
    quantity: undefined,
    unit,
    weight: 0,
    says: name === '' ? 'without a name' : `"${name}" is not a quantity that is used`,
  };
}

/** A number that was read: in one way, or in two. */
export type ReadNumber =
  | { readonly kind: 'one'; readonly value: number }
  | { readonly kind: 'two'; readonly values: readonly [number, number] };

/** What became of a text that should be a number. */
export type NumberReading = ReadNumber | { readonly kind: 'none' };

const NONE: NumberReading = { kind: 'none' };

/** Digits with `.` and `,`: which of them marks the decimals? The last one, unless it can only group. */
function readDigits(digits: string): NumberReading {
  const dots = digits.split('.').length - 1;
  const commas = digits.split(',').length - 1;
  if (dots + commas === 0) return one(digits);
  if (dots > 0 && commas > 0) {
    const decimalIsComma = digits.lastIndexOf(',') > digits.lastIndexOf('.');
    const [group, decimal, decimals] = decimalIsComma
      ? (['.', ',', commas] as const)
      : ([',', '.', dots] as const);
    const [whole = '', part = ''] = decimals === 1 ? digits.split(decimal) : [];
    return isGrouped(whole, group) ? one(`${whole.replaceAll(group, '')}.${part}`) : NONE;
  }
  const mark = dots > 0 ? '.' : ',';
  if (dots + commas > 1) return isGrouped(digits, mark) ? one(digits.replaceAll(mark, '')) : NONE;
  const decimal = one(digits.replace(',', '.'));
  // 1,500 is one and a half in one shop and fifteen hundred in the next
  if (mark === ',' && /^[1-9]\d{0,2},\d{3}$/.test(digits) && decimal.kind === 'one') {
    return { kind: 'two', values: [decimal.value, Number(digits.replace(',', ''))] };
  }
  return decimal;
}

function isGrouped(digits: string, mark: string): boolean {
  const groups = digits.split(mark);
  return /^[1-9]\d{0,2}$/.test(groups[0] ?? '') && groups.slice(1).every((group) => /^\d{3}$/.test(group));
}

function one(digits: string): NumberReading {
  return /\d/.test(digits) ? { kind: 'one', value: Number(digits) } : NONE;
}

function scaled(reading: NumberReading, factor: number): NumberReading {
  if (reading.kind === 'one') return { kind: 'one', value: reading.value * factor };
  if (reading.kind === 'two') {
    return { kind: 'two', values: [reading.values[0] * factor, reading.values[1] * factor] };
  }
  return reading;
}

/** Reads `0.375`, `9,5`, `1 500`, `3/8`, `1 1/2`, `1-1/2`, `1e-3`, each with an optional sign, in plain characters. */
export function readNumber(text: string): NumberReading {
  const sign = text.startsWith('-') ? -1 : 1;
  const unsigned = text.replace(/^[-+]/, '');
  const fraction = /^(?:(\d{1,6})[ –-])?(\d{1,6}) ?\/ ?(\d{1,6})$/.exec(unsigned);
  if (fraction) {
    const [, whole, top, bottom] = fraction;
    const mixedTooBig = whole !== undefined && Number(top) >= Number(bottom);
    if (Number(bottom) === 0 || mixedTooBig) return NONE;
    return { kind: 'one', value: sign * (Number(whole ?? '0') + Number(top) / Number(bottom)) };
  }
  const decimal = /^([\d.,]+|[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?)(?:e([-+]?\d{1,3}))?$/i.exec(unsigned);
  if (!decimal) return NONE;
  const digits = decimal[1] ?? '';
  const reading = digits.includes(' ')
    ? one(digits.replaceAll(' ', '').replace(',', '.'))
    : readDigits(digits);
  if (decimal[2] === undefined) return scaled(reading, sign);
  return scaled(reading, sign * Number(`1e${decimal[2]}`));
}

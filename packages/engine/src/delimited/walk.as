// AssemblyScript. Compiled to walk-wasm.ts by `npm run kernel`; quick-walk.ts does the same in TypeScript. Where things lie
// in memory: walk-memory.ts.

// Places of the 32-bit numbers at the head, in the order of HEAD in walk-kernel.ts.
const WIDTH: usize = 0;
const DELIMITER: usize = 4;
const QUOTE: usize = 8;
const EOL: usize = 12;
const DECIMAL: usize = 16;
const REPEATED: usize = 20;
const KINDS: usize = 24;
const STORES: usize = 28;
const SCALES: usize = 32;
const STARTS: usize = 36;
const POWERS: usize = 40;
const FILLED: usize = 44;

const NUMBER: u32 = 1;
const MOMENT: u32 = 2;
const CR: u32 = 13;
const SPACE: u32 = 32;
const PLUS: u32 = 43;
const MINUS: u32 = 45;
const ZERO: u32 = 48;
const DIGITS_MOST: usize = 16;
const EXACT_MOST: u64 = 9007199254740991;

// Walks over whole rows; gives the place of the first that is not as expected, or that has no room. How many rows were read
// in all is left at FILLED.
export function walk(begin: usize, limit: usize, room: u32): usize {
  const width = load<u32>(WIDTH);
  const delimiter = load<u32>(DELIMITER);
  const quote = load<u32>(QUOTE);
  const eol = load<u32>(EOL);
  const decimal = load<u32>(DECIMAL);
  const repeated = load<u32>(REPEATED) != 0;
  const kinds = load<u32>(KINDS);
  const stores = load<u32>(STORES);
  const scales = load<u32>(SCALES);
  const starts = load<u32>(STARTS);
  const powers = load<u32>(POWERS);
  const point = decimal - ZERO;
  const skipsSpace = delimiter != SPACE;
  let filled = load<u32>(FILLED);
  let at = begin;
  while (at < limit && filled < room) {
    const start = at;
    let good = true;
    if (repeated) while (<u32>load<u8>(at) == delimiter) at += 1;
    for (let index: u32 = 0; index < width; index += 1) {
      const kind = <u32>load<u8>(kinds + index);
      let c = <u32>load<u8>(at);
      if (kind == NUMBER) {
        if (skipsSpace) while (c == SPACE) c = load<u8>(++at);
        let negative = false;
        if (c == MINUS) {
          negative = true;
          at += 1;
        } else if (c == PLUS) at += 1;
        // digit by digit: how long a number is can be foretold, so that nothing waits for it
        const first = at;
        let mantissa: u64 = 0;
        let digit = <u32>load<u8>(at) - ZERO;
        while (digit <= 9) {
          mantissa = mantissa * 10 + digit;
          digit = <u32>load<u8>(++at) - ZERO;
        }
        let digits = at - first;
        let power: usize = 0;
        if (digit == point) {
          const from = ++at;
          digit = <u32>load<u8>(at) - ZERO;
          while (digit <= 9) {
            mantissa = mantissa * 10 + digit;
            digit = <u32>load<u8>(++at) - ZERO;
          }
          power = at - from;
          digits += power;
        }
        c = digit + ZERO;
        if (digits == 0 || digits > DIGITS_MOST || mantissa > EXACT_MOST) {
          good = false;
          break;
        }
        if (skipsSpace) while (c == SPACE) c = load<u8>(++at);
        let value = <f64>mantissa;
        if (power > 0) value /= load<f64>(powers + (power << 3));
        if (negative) value = -value;
        const scale = scales + 40 * index;
        // it may stand for no value
        if (!(value >= load<f64>(scale, 24) && value <= load<f64>(scale, 32))) {
          good = false;
          break;
        }
        store<f64>(
          <usize>load<u32>(stores + (index << 2)) + (<usize>filled << 3),
          ((value + load<f64>(scale, 16)) * load<f64>(scale)) / load<f64>(scale, 8),
        );
      } else if (kind == MOMENT) {
        if (c == quote) {
          good = false;
          break;
        }
        const from = at;
        while (c != delimiter && c != eol) c = load<u8>(++at);
        const to = <u32>load<u8>(at - 1) == CR ? at - 1 : at;
        const pair = <usize>load<u32>(stores + (index << 2)) + (<usize>filled << 3);
        store<u32>(pair, <u32>from);
        store<u32>(pair, <u32>to, 4);
      } else {
        if (c == quote || (skipsSpace && c == SPACE)) {
          good = false;
          break;
        }
        while (c != delimiter && c != eol) c = load<u8>(++at);
      }
      if (index < width - 1) {
        if (c != delimiter) {
          good = false;
          break;
        }
        at += 1;
        if (repeated) while (<u32>load<u8>(at) == delimiter) at += 1;
      } else {
        if (repeated) while (<u32>load<u8>(at) == delimiter) at += 1;
        else if (c == delimiter) at += 1;
        if (<u32>load<u8>(at) == CR && eol != CR) at += 1;
        if (<u32>load<u8>(at) != eol) good = false;
        at += 1;
      }
    }
    if (!good) {
      at = start;
      break;
    }
    store<u32>(starts + (filled << 2), <u32>start);
    filled += 1;
  }
  store<u32>(FILLED, filled);
  return at;
}

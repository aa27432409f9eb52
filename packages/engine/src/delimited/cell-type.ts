/** What a cell looks like. */
export type CellType = 'empty' | 'number' | 'moment' | 'word' | 'text' | 'unknown';

const NUMBER = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[-+]?\d{1,3})?$/i;
const GROUPED =
  /^[-+]?\d{1,3}(?:(?:,\d{3})+(?:\.\d+)?|(?:\.\d{3})+(?:,\d+)?|(?:[ '’\u00a0\u202f]\d{3})+(?:[.,]\d+)?)$/;
const WITH_SIGN = /^[-+]?(?:[$€£]\s?)?[\d.,]+\s?(?:%|[$€£])?$/;
const NO_VALUE = /^(?:nan|[-+]?inf(?:inity)?|null|none|n\/?a|#n\/a|-+|\?+)$/i;
const DATE = '(?:\\d{4}[-/.]\\d{1,2}[-/.]\\d{1,2}|\\d{1,2}[-/.]\\d{1,2}[-/.](?:\\d{4}|\\d{2}))';
const TIME = '\\d{1,2}:\\d{2}(?::\\d{2}(?:[.,:]\\d{1,9})?)?(?: ?[ap]\\.?m\\.?)?';
const ZONE = '(?: ?(?:z|utc|gmt|[-+]\\d{2}:?\\d{2}))?';
const MOMENT = new RegExp(
  `^(?:${DATE}(?:[ T]${TIME}${ZONE})?|${TIME}${ZONE}|\\d{1,2}[- ][a-z]{3}[- ]\\d{2,4})$`,
  'i',
);
const LINK = /^(?:[a-z][a-z+.-]*:\/\/|www\.)[^\s]+$|^[^\s@,;|]+@[^\s@,;|]+\.[a-z]{2,}$/i;
const WORD = /^[\p{L}\p{N}_.+#$%&/()[\]°²³µμΩ'’"*=<>@!?:\\-]+$/u;
const WORDS = /^[^,;|\t^~]+$/u;

/** The type of a cell as written. A text with a usual delimiter in it, unquoted, is no type that anybody writes. */
export function cellType(cell: string, quoted = false): CellType {
  const text = cell.trim();
  if (text === '') return 'empty';
  // quotes that were not taken for such
  if (!quoted && text.length > 1 && /^(["']).*\1$/su.test(text)) return 'unknown';
  if (text.length < 40) {
    if (NUMBER.test(text) || GROUPED.test(text) || WITH_SIGN.test(text) || NO_VALUE.test(text))
      return 'number';
    if (MOMENT.test(text)) return 'moment';
  }
  if (LINK.test(text) || WORD.test(text)) return 'word';
  return quoted || WORDS.test(text) ? 'text' : 'unknown';
}

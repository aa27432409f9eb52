/** Characters that would end a line of the file, or that no program shows. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufffe\uffff]+/gu;

/**
 * A text as a DXF file holds it: on one line, and so that a program shows it as it is.
 *
 * `%%c` and the like stand for signs there, `^J` for control characters and `\U+` for code points.
 */
export function dxfText(text: string): string {
  return text
    .replace(UNPRINTABLE, ' ')
    .replace(/%{2,}/gu, (signs) => '%%%'.repeat(signs.length))
    .replaceAll('^', '^ ')
    .replace(/\\(?=[UuMm]\+)/gu, '\\ ');
}

/** Characters that no document may hold: control characters other than tab and line ends, and halves of a character. */
export const UNPRINTABLE = /[^\P{Cc}\t\n\r\u0085]|\p{Cs}/u;

const LONGEST = 60;

/** A value as it is quoted in a message: short, on one line, without characters that steer a screen. */
export function shown(value: unknown): string {
  const text =
    typeof value === 'string' ? value : typeof value === 'number' ? String(value) : JSON.stringify(value);
  const line = (text ?? String(value)).replace(/\s+/gu, ' ').replace(/\p{Cc}|\p{Cs}/gu, '�');
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}

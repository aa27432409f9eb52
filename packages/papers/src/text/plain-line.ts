/** A text of the job on one line of a terminal: control characters, which could command the terminal, are dropped. */
export function plainLine(text: string): string {
  return text
    .replace(/\s+/gu, ' ')
    .replace(/[\p{Cc}\p{Cs}]/gu, '')
    .replace(/[\u202a-\u202e\u2066-\u2069]/gu, '');
}

/** Rows as comma-separated values (RFC 4180), a line of names first. */
export function csvText(
  names: readonly string[],
  rows: readonly (readonly (string | number | null)[])[],
): string {
  return `${[names, ...rows].map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

/** A text that a spreadsheet would take for a formula is marked as text. */
function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = /^[=+\-@\t\r]/u.test(value) ? `'${value}` : value;
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

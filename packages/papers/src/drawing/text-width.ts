const NARROW = /[\s.,:;'|!()iljtfI]/u;
const WIDE = /[mwMW%@×→≥≤±+−—–A-Z]/u;

/** Width of a line of text, near enough to keep labels apart without a font at hand [drawing unit]. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const sign of text) ems += NARROW.test(sign) ? 0.34 : WIDE.test(sign) ? 0.8 : 0.62;
  return ems * size;
}

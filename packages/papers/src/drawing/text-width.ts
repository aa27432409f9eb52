const NARROW = /[\s.,:;'|!()iljtfI1]/u;
const WIDE = /[mwMW%@×→≥≤±—–A-Z]/u;

/** Width of a line of text, near enough to keep labels apart without a font at hand [drawing unit]. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const sign of text) ems += NARROW.test(sign) ? 0.32 : WIDE.test(sign) ? 0.72 : 0.56;
  return ems * size;
}

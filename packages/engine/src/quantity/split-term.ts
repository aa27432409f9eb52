/** Splits plain text into the number in front and the unit behind; either may be empty. */
export function splitTerm(plain: string): { number: string; unit: string } {
  const found = /^([-+]?[\d.,][\d.,/ –-]*(?:e[-+]?\d+)?)(.*)$/i.exec(plain);
  if (!found) return { number: '', unit: plain };
  // a hyphen may join number and unit, as in 3/8-in
  return { number: (found[1] ?? '').replace(/[ –-]+$/, ''), unit: (found[2] ?? '').trim() };
}

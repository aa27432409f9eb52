import type { Issue, Outcome } from '../../issue/index.ts';
import { INCH } from '../../quantity/index.ts';

/** Bores by trade size [m]: hoses are named by their bore; steel pipe, schedule 40, has its own table. */
const HOSES: Readonly<Record<string, number>> = {
  '1/4 in': INCH / 4,
  '5/16 in': (5 * INCH) / 16,
  '3/8 in': (3 * INCH) / 8,
  '1/2 in': INCH / 2,
  '5/8 in': (5 * INCH) / 8,
  '3/4 in': (3 * INCH) / 4,
  '1 in': INCH,
  '1-1/4 in': 1.25 * INCH,
  '1-1/2 in': 1.5 * INCH,
  '2 in': 2 * INCH,
  '6 mm': 0.006,
  '8 mm': 0.008,
  '10 mm': 0.01,
  '13 mm': 0.013,
  '16 mm': 0.016,
  '19 mm': 0.019,
  '25 mm': 0.025,
  '32 mm': 0.032,
  '38 mm': 0.038,
  '50 mm': 0.05,
};
const PIPES: Readonly<Record<string, number>> = {
  '1/4 in': 0.364 * INCH,
  '3/8 in': 0.493 * INCH,
  '1/2 in': 0.622 * INCH,
  '3/4 in': 0.824 * INCH,
  '1 in': 1.049 * INCH,
  '1-1/4 in': 1.38 * INCH,
  '1-1/2 in': 1.61 * INCH,
  '2 in': 2.067 * INCH,
};

/**
 * Bore of a hose or of a schedule 40 steel pipe by its trade size.
 *
 * @param kind - what it is [text], `hose` or `pipe`
 * @param size - trade size [text], such as `1/2 in` or `13 mm`
 * @returns bore [m], or the sizes that are known [record]
 * @source hoses: named by their bore; pipes: ASME B36.10 schedule 40 (memory; 1 in as in Crane TP-410)
 * @example
 * airBore('pipe', '1 in') // => {"ok":true,"value":0.0266446}
 */
export function airBore(kind: 'hose' | 'pipe', size: string): Outcome<number> {
  const sizes = kind === 'hose' ? HOSES : PIPES;
  const asked = size
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/["”]$/, ' in')
    .replace(/\s+in(ch)?$/, ' in');
  const bore = Object.hasOwn(sizes, asked) ? sizes[asked] : undefined;
  if (bore !== undefined) return { ok: true, value: bore };
  const known = Object.keys(sizes);
  const issue: Issue = {
    code: 'AIR_SIZE_UNKNOWN',
    path: '',
    message: `No ${kind} of size ${size} is known; known are ${known.join(', ')}. Give the bore itself for another.`,
    read: size,
    accepted: known.join(', '),
  };
  return { ok: false, issues: [issue] };
}

/** Trade sizes of hose wider than a bore, the narrowest first; of sizes alike the first. */
export function widerHoses(bore: number): readonly { readonly size: string; readonly bore: number }[] {
  return Object.entries(HOSES)
    .map(([size, each]) => ({ size, bore: each }))
    .filter(({ size, bore: each }) => size.endsWith('in') && each > bore * 1.02)
    .sort((a, b) => a.bore - b.bore);
}

/** Absolute roughness of clean walls [m]; the hose's is an assumption. */
export const AIR_ROUGHNESS: Readonly<Record<string, number>> = {
  drawn_copper: 1.5e-6,
  stainless_steel: 1.5e-5,
  commercial_steel: 4.5e-5,
  steel_ten_years: 1.5e-4,
  galvanised_steel: 1.5e-4,
  plastic_pipe: 7e-6,
  smooth_hose: 1.5e-6,
};

/** Loss of one fitting, in bores of the pipe it sits on [-]. */
export const AIR_FITTINGS: Readonly<Record<string, number>> = {
  '90 deg elbow': 30,
  '45 deg elbow': 16,
  '90 deg long-radius elbow': 20,
  '90 deg street elbow': 50,
  '45 deg street elbow': 26,
  'globe valve, open': 340,
  'swing check valve': 135,
  'gate valve, open': 13,
  'ball valve, full bore': 3,
};

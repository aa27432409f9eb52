import type { Source } from '../limit/index.ts';

/** Work whose usual noise is known. */
export type NoisyWork =
  | 'gouging'
  | 'grinding'
  | 'chipping'
  | 'gas_shielded_welding'
  | 'stick_welding'
  | 'plasma_cutting';

/** Band of levels at the ear. */
export interface LevelBand {
  /** Lower end [dBA]. */
  readonly least: number;
  /** Upper end [dBA]. */
  readonly most: number;
}

/** Where the bands of work other than gouging come from. */
export const PROCESS_NOISE_SOURCE: Source = {
  text: 'HSE, typical process noise levels',
  provenance: 'confirmed',
};

/** Where the band of gouging comes from: its upper end is what was met at the ear in the field. */
export const GOUGING_NOISE_SOURCE: Source = {
  text: 'HSE, typical process noise levels; up to 120 dBA at the operator’s ear, NIOSHTIC-2 20039291',
  provenance: 'confirmed',
};

const BANDS: Readonly<Record<NoisyWork, LevelBand>> = {
  gouging: { least: 100, most: 120 },
  grinding: { least: 95, most: 105 },
  chipping: { least: 105, most: 105 },
  gas_shielded_welding: { least: 95, most: 102 },
  stick_welding: { least: 85, most: 95 },
  plasma_cutting: { least: 98, most: 105 },
};

/**
 * Usual noise of a kind of work at the ear, to stand in until it is measured.
 *
 * Several torches at once raise the upper end by 10 log10(n), as if all stood equally near; the lower end stays.
 *
 * @param work - kind of work [text], one of the NoisyWork names
 * @param torches - torches burning at once [-], >= 1
 * @returns band of levels [dBA]
 * @source HSE, typical process noise levels, gouging up to NIOSHTIC-2 20039291 (confirmed); sum of equal sources (derived)
 * @example
 * processNoise('gouging', 1) // => {"least":100,"most":120}
 */
export function processNoise(work: NoisyWork, torches: number): LevelBand {
  const { least, most } = BANDS[work];
  return { least, most: work === 'gouging' ? most + 10 * Math.log10(torches) : most };
}

/** Sound power of mechanised gouging as measured in a reverberation chamber; the larger electrode is the louder. */
export const GOUGING_SOUND_POWER: LevelBand & { readonly source: Source } = {
  least: 116,
  most: 130,
  source: { text: 'NIOSH mining programme, NIOSHTIC-2 20039291', provenance: 'confirmed' },
};

import {
  formatStated,
  type Plan,
  parseAmount,
  type ReadJob,
  type UnitSystem,
  type WrittenEntry,
} from '@furrow/engine';

/** One pass as it is typed. */
export interface PassForm {
  readonly current: string;
  readonly voltage: string;
  readonly travel: string;
  readonly length: string;
  /** Depth readings, one after the other. */
  readonly readings: string;
}

/** A trial or finished job as it is typed. */
export interface EntryForm {
  readonly kind: 'trial' | 'job';
  readonly date: string;
  readonly material: string;
  readonly position: string;
  readonly diameter: string;
  readonly electrodeKind: string;
  readonly torch: string;
  readonly gaugeSd: string;
  readonly passes: readonly PassForm[];
}

const NO_PASS: PassForm = { current: '', voltage: '', travel: '', length: '', readings: '' };

/** Units that a bare number is taken to be in, by the units that amounts are shown in. */
export const TYPED_UNITS = {
  metric: { length: 'mm', speed: 'mm/min' },
  inch: { length: 'in', speed: 'in/min' },
} as const;

/** A form for a new entry; its settings are those of the plan that is open, where there is one. */
export function newForm(
  kind: EntryForm['kind'],
  date: string,
  units: UnitSystem,
  open: { readonly read: ReadJob; readonly plan: Plan } | undefined,
): EntryForm {
  if (open === undefined) {
    return {
      kind,
      date,
      material: 'carbon_steel',
      position: 'flat',
      diameter: '',
      electrodeKind: 'jointed',
      torch: '',
      gaugeSd: '',
      passes: [NO_PASS],
    };
  }
  const { read, plan } = open;
  const { plate, seam, kit } = read.job;
  const tryout = plan.trial ?? plan.run_in;
  const voltage = formatStated(plan.passes[0]?.arc_voltage_V ?? 42, 'V', units);
  const passOf = (current: number, travel: number, length: number): PassForm => ({
    current: formatStated(current, 'A', units),
    voltage,
    travel: formatStated(travel, 'mm/min', units),
    length: formatStated(length, 'mm', units),
    readings: '',
  });
  return {
    kind,
    date,
    material: plate.material,
    position: seam.position,
    diameter: formatStated(plan.electrode_diameter_mm, 'mm', units),
    electrodeKind: plan.electrode_kind,
    torch: kit.torch ?? '',
    gaugeSd: formatStated(1000 * kit.gauge.reading_sd, 'mm', units),
    passes:
      kind === 'trial' && tryout !== undefined
        ? [passOf(tryout.current_A, tryout.travel_mm_per_min, tryout.length_mm)]
        : [
            passOf(
              plan.passes[0]?.current_A ?? 0,
              plan.passes[0]?.travel_mm_per_min ?? 0,
              kind === 'trial' ? 300 : 1000 * seam.length,
            ),
          ],
  };
}

/** Depth readings as they are typed, one after the other, the unit after the last: `15.1 15.4 14,9 mm`, `5/8, 9/16 in`. */
export function readingsOf(text: string, units: UnitSystem): readonly string[] {
  const [, figures = '', typed = ''] = /^([\d\s.,;/-]*?)\s*([a-z"'″′]*)$/iu.exec(text.trim()) ?? [];
  const unit = typed === '' ? TYPED_UNITS[units].length : typed;
  const parts = figures.split(/;\s*|,\s+|\s+/u).filter((part) => part !== '');
  if (parts.length === 0) return text.trim() === '' ? [] : [text.trim()];
  // a whole number before a fraction belongs to it: 1 3/16
  const whole: string[] = [];
  for (const part of parts) {
    if (part.includes('/') && /^\d+$/u.test(whole.at(-1) ?? '')) whole.push(`${whole.pop()}-${part}`);
    else whole.push(part);
  }
  return whole.map((part) => `${part} ${unit}`);
}

/** The entry that a form says, as it is written into the file. */
export function entryOf(form: EntryForm, id: string, units: UnitSystem): WrittenEntry {
  const { length: size, speed } = TYPED_UNITS[units];
  return {
    id,
    kind: form.kind,
    date: form.date,
    material: form.material,
    position: form.position,
    ...(form.torch.trim() !== '' && { torch: form.torch.trim() }),
    electrode: { diameter: withUnit(form.diameter, size), kind: form.electrodeKind },
    ...(form.gaugeSd.trim() !== '' && { gauge_sd: withUnit(form.gaugeSd, size) }),
    passes: form.passes.map((pass) => {
      const length = withUnit(pass.length, size);
      const depths = readingsOf(pass.readings, units);
      const places = placesAlong(length, depths.length);
      return {
        current: withUnit(pass.current, 'A'),
        ...(pass.voltage.trim() !== '' && { voltage: withUnit(pass.voltage, 'V') }),
        travel: withUnit(pass.travel, speed),
        ...(length !== '' && { length }),
        stations: depths.map((depth, index) => ({ at: `${places[index]} mm`, depth })),
      };
    }),
  };
}

/** The form that says an entry of the file. */
export function formOf(entry: WrittenEntry): EntryForm {
  const text = (value: unknown): string =>
    value === undefined || value === null || typeof value === 'object' ? '' : String(value);
  const electrode = (entry['electrode'] ?? {}) as Record<string, unknown>;
  const passes = (Array.isArray(entry['passes']) ? entry['passes'] : []) as Record<string, unknown>[];
  return {
    kind: entry['kind'] === 'job' ? 'job' : 'trial',
    date: text(entry['date']),
    material: text(entry['material']),
    position: text(entry['position'] ?? 'flat'),
    diameter: text(electrode['diameter']),
    electrodeKind: text(electrode['kind'] ?? 'jointed'),
    torch: text(entry['torch']),
    gaugeSd: text(entry['gauge_sd']),
    passes: passes.map((pass) => ({
      current: text(pass['current']),
      voltage: text(pass['voltage']),
      travel: text(pass['travel']),
      length: text(pass['length']),
      readings: oneUnit(
        (Array.isArray(pass['stations']) ? pass['stations'] : []).map((station: Record<string, unknown>) =>
          text(station['depth']),
        ),
      ),
    })),
  };
}

/** Readings in one line: the unit once where all have the same. */
function oneUnit(depths: readonly string[]): string {
  const split = depths.map((depth) => /^(.*\d)\s*([a-z"]+)$/iu.exec(depth));
  const [unit] = split.map((found) => found?.[2]);
  if (unit === undefined || split.some((found) => found?.[2] !== unit)) return depths.join('; ');
  return `${split.map((found) => found?.[1] ?? '').join('; ')} ${unit}`;
}

/** An amount as it is written into the file: a bare number is taken to be in the unit shown beside its field. */
function withUnit(text: string, unit: string): string {
  const typed = text.trim();
  return /^[\d\s.,/-]+$/u.test(typed) ? `${typed} ${unit}` : typed;
}

/** Where readings stand that are spread evenly over a length [mm]. */
function placesAlong(length: string, count: number): readonly number[] {
  const read = parseAmount(length, 'length');
  const whole = read.ok ? 1000 * read.value : 100 * count;
  return Array.from({ length: count }, (_, index) => Math.round((whole * (index + 0.5)) / count));
}

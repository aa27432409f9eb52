import type { PlanPass } from '@furrow/engine';

/** Passes that are run with the same setting, one after the other, in one layer. */
export interface PassGroup {
  readonly layer: number;
  readonly passes: readonly PlanPass[];
}

/** Gathers neighbouring passes whose setting reads the same, so that many passes stay readable. */
export function passGroups(
  passes: readonly PlanPass[],
  shown: (pass: PlanPass) => readonly string[],
): readonly PassGroup[] {
  const groups: { layer: number; setting: string; passes: PlanPass[] }[] = [];
  for (const pass of passes) {
    const setting = JSON.stringify(shown(pass));
    const last = groups.at(-1);
    if (last !== undefined && last.layer === pass.layer && last.setting === setting) last.passes.push(pass);
    else groups.push({ layer: pass.layer, setting, passes: [pass] });
  }
  return groups.map(({ layer, passes: members }) => ({ layer, passes: members }));
}

/** Numbers of a group as a range: `3` or `3–8`. */
export function numberRange(numbers: readonly number[]): string {
  const first = numbers[0];
  const last = numbers.at(-1);
  if (first === undefined || last === undefined) return '';
  return first === last ? String(first) : `${first}–${last}`;
}

import { readFileSync } from 'node:fs';
import { type Kit, readKit } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { editFile, kitFile } from '../../sheet/document/index.ts';
import { bayOfKit } from './bay-of-kit.ts';
import { movables, movedKit, moveEdits, placeAfterKey, placeWords } from './movable.ts';

const TEXT = readFileSync(new URL('../../../../../examples/yard-kit.yaml', import.meta.url), 'utf8');

function kitOf(text: string): Kit {
  const outcome = readKit(text);
  if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
  return outcome.value.kit;
}

function named(kit: Kit, id: string) {
  return movables(kit, { x_m: 10, y_m: 5 }).find((movable) => movable.id === id)!;
}

describe('what can be moved on the plan', () => {
  const kit = kitOf(TEXT);

  it('writes a moved point into the kit file and leaves the rest as it was', () => {
    const edited = editFile(kitFile(TEXT), moveEdits(named(kit, 'power'), { x_m: 2.5, y_m: 4 }, 'metric'));
    if (!edited.ok) throw new Error(edited.why);
    expect(edited.file.text).toBe(
      TEXT.replace('power: { x: 1 m, y: 3 m }', 'power: { x: 2.50 m, y: 4.00 m }'),
    );
  });

  it('moves every corner of an outline by as much as its handle', () => {
    const column = named(kit, 'obstacle-1');
    const to = { x_m: column.at.x_m + 1, y_m: column.at.y_m - 0.5 };
    const edited = editFile(kitFile(TEXT), moveEdits(column, to, 'metric'));
    if (!edited.ok) throw new Error(edited.why);
    const outline = kitOf(edited.file.text).bay?.obstacles?.[1]?.outline;
    expect(outline).toEqual(movedKit(kit, column, to).bay?.obstacles?.[1]?.outline);
    expect(outline?.[0]).toEqual({ x: 11, y: 2.5 });
  });

  it('states the station’s place where it was only found before, and the other way round', () => {
    const edited = editFile(kitFile(TEXT), moveEdits(named(kit, 'station'), { x_m: 9, y_m: 5 }, 'metric'));
    if (!edited.ok) throw new Error(edited.why);
    expect(kitOf(edited.file.text).bay?.station).toEqual({ x: 9, y: 5 });
    const back = editFile(edited.file, [{ do: 'remove', path: ['bay', 'station'] }]);
    if (!back.ok) throw new Error(back.why);
    expect(kitOf(back.file.text).bay?.station).toBeUndefined();
    expect(movables(kit, undefined).some(({ id }) => id === 'station')).toBe(false);
  });

  it('shows what is dragged at once, without changing the kit', () => {
    const before = structuredClone(kit);
    const moved = bayOfKit(movedKit(kit, named(kit, 'air'), { x_m: 3, y_m: 8 }));
    expect(moved?.posts.find(({ kind }) => kind === 'air')?.at_m).toEqual({ x_m: 3, y_m: 8 });
    expect(kit).toEqual(before);
  });

  it('steps by the keys in the shop’s own units', () => {
    const at = { x_m: 1, y_m: 2 };
    expect(placeAfterKey('ArrowRight', false, at, 'metric')).toEqual({ x_m: 1.1, y_m: 2 });
    expect(placeAfterKey('ArrowUp', true, at, 'metric')).toEqual({ x_m: 1, y_m: 3 });
    expect(placeAfterKey('ArrowDown', false, at, 'inch')?.y_m).toBeCloseTo(2 - 0.1524, 9);
    expect(placeAfterKey('Enter', false, at, 'metric')).toBeUndefined();
    expect(placeWords(-0.001, 'metric')).toBe('0.00 m');
    expect(placeWords(3.048, 'inch')).toBe('10.0 ft');
  });
});

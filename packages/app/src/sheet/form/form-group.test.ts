import { describe, expect, it } from 'vitest';
import { fieldList } from '../document/index.ts';
import { type FormGroup, fieldsIn, formGroups } from './form-group.ts';

function allFields(group: FormGroup): string[] {
  return group.entries.flatMap((entry) => ('field' in entry ? [entry.field.path] : allFields(entry.group)));
}

describe('formGroups', () => {
  it('has every field of the job once, but for the version of the file', () => {
    const shown = formGroups(fieldList()).flatMap(allFields);
    const known = fieldList().map((field) => field.path);
    expect(shown.toSorted()).toEqual(known.filter((path) => path !== 'furrow').toSorted());
  });

  it('keeps the order of the file inside a group', () => {
    const groove = formGroups(fieldList()).find(({ path }) => path === 'groove')!;
    const names = groove.entries.map((entry) => ('field' in entry ? entry.field.path : entry.group.path));
    expect(names.slice(0, 4)).toEqual(['groove.purpose', 'groove.shape', 'groove.depth', 'groove.width']);
  });

  it('puts what is filled in first before all others, in that order, and nothing twice', () => {
    const paths = formGroups(fieldList(), 'Job', ['kit', 'groove', 'none']).map(({ path }) => path);
    expect(paths.slice(0, 4)).toEqual(['kit', 'groove', '', 'seam']);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths.toSorted()).toEqual(
      formGroups(fieldList())
        .map(({ path }) => path)
        .toSorted(),
    );
  });

  it('puts the fields at the top in a group of their own', () => {
    const [top] = formGroups(fieldList());
    expect(fieldsIn(top!).map(({ path }) => path)).toEqual(['title', 'note']);
  });
});

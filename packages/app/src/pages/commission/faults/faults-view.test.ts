import { FAULT_MODEL } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { faultsView } from './faults-view.ts';
import { newId } from './new-id.ts';

describe('faultsView', () => {
  it('ranks by how often each cause is the one as long as nothing is known', () => {
    const view = faultsView(FAULT_MODEL, {}, {});
    expect(view.known).toBe(false);
    expect(view.ranked).toHaveLength(FAULT_MODEL.causes.length);
    expect(view.read).toEqual([]);
  });

  it('takes readings before answers, and proposes neither again', () => {
    const view = faultsView(
      FAULT_MODEL,
      { hot_joint: 'yes', joint_millivolts: 'in', contact_worn: 'no', shallow_start: 'unknown' },
      { joint_millivolts: 'high' },
    );
    expect(view.known).toBe(true);
    expect(view.ranked[0]?.cause).toBe('loose_joint');
    expect(view.read).toEqual([{ id: 'joint_millivolts', words: 'millivolts across the joints: high' }]);
    expect(view.looked.map(({ id }) => id)).toEqual(['contact_worn']);
    const next = view.next.map(({ check }) => check);
    expect(next).not.toContain('joint_millivolts');
    expect(next).not.toContain('contact_worn');
  });

  it('passes over names that the table does not hold', () => {
    const view = faultsView(FAULT_MODEL, { of_an_older_table: 'yes' }, {});
    expect(view.ranked.length).toBeGreaterThan(0);
    expect(view.known).toBe(false);
  });
});

describe('newId', () => {
  it('is a UUID of version 4, made of the bytes given', () => {
    expect(newId((bytes) => void bytes.fill(255))).toBe('ffffffff-ffff-4fff-bfff-ffffffffffff');
    expect(newId((bytes) => void bytes.fill(0))).toBe('00000000-0000-4000-8000-000000000000');
  });
});

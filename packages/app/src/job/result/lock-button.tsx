import type { VNode } from 'preact';
import { useUnits } from '../../ui/theme/index.ts';
import { isCurrent, useBench, useBenchState } from '../state/index.ts';
import { type LockName, toggleLock } from './lock-edits.ts';

const TITLES: Readonly<Record<LockName, string>> = {
  electrode_diameter: 'electrode',
  current: 'current',
  travel: 'travel',
  tracks: 'tracks',
  track_spacing: 'track spacing',
  layers: 'layers',
};

interface LockButtonProps {
  readonly name: LockName;
  /** What stands on the button beside its mark, where the value is not shown next to it. */
  readonly label?: string;
}

/** Holds a value of the plan in the job file, so that the rest is planned around it. */
export function LockButton({ name, label }: LockButtonProps): VNode {
  const bench = useBench();
  const units = useUnits();
  const locked = useBenchState((state) => state.read?.job.locks[name] !== undefined);
  const ready = useBenchState((state) => isCurrent(state) && state.planned?.answer.plan !== undefined);
  const toggle = (): void => {
    const { file, read, planned } = bench.store.get();
    const plan = planned?.answer.plan;
    if (ready && read !== undefined && plan !== undefined) {
      bench.change(toggleLock(plan, name, { file, locks: read.job.locks, units }));
    }
  };
  return (
    <button
      type="button"
      class="lock"
      aria-pressed={locked}
      aria-disabled={!ready}
      aria-label={`Lock ${TITLES[name]}`}
      onClick={toggle}
    >
      <svg class="lock-mark" viewBox="0 0 16 16" aria-hidden="true">
        <path d="M8 8v7" />
        <circle cx={8} cy={5} r={3.4} class={locked ? 'lock-held' : 'lock-free'} />
      </svg>
      <span aria-hidden="true">{label ?? (locked ? 'locked' : 'lock')}</span>
    </button>
  );
}

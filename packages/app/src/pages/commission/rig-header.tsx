import type { VNode } from 'preact';
import { useBench, useBenchState } from '../../job/state/index.ts';
import { jobPath, nameAddress } from '../../ui/route/index.ts';
import { SiteHeader, usePage } from '../../ui/site/index.ts';
import { useRig, useRigState } from './rig-context.ts';
import { rigSaveWords } from './rig-save-words.ts';

/** Title of the page, where its readings stand, and what can be done with them as a whole. */
export function RigHeader({ title }: { readonly title: string }): VNode {
  const rig = useRig();
  const bench = useBench();
  const { end } = usePage();
  const jobSaved = useBenchState((state) => state.saved !== undefined);
  const jobFailed = useBenchState((state) => (state.save.is === 'failed' ? state.save.why : undefined));
  const saveJob = async (): Promise<void> => {
    const id = await bench.save(false);
    if (id !== undefined) nameAddress(`${jobPath(id)}/${end}`);
  };
  const words = useRigState(rigSaveWords);
  const save = useRigState((state) => state.save);
  const clashes = useRigState((state) => state.newer?.clashes);
  const failed = save.is === 'failed' || jobFailed !== undefined;
  return (
    <SiteHeader
      title={title}
      state={
        <p class={`save-state${failed ? ' save-failed' : ''}`} role="status" aria-label="Save state">
          {jobFailed === undefined ? words : `the job was not saved: ${jobFailed}`}
        </p>
      }
    >
      <fieldset class="actions">
        <legend class="unseen">The readings as a whole</legend>
        {jobSaved ? (
          <button type="button" onClick={() => void rig.saveNow()}>
            Save now
          </button>
        ) : (
          <button type="button" class="primary" onClick={() => void saveJob()}>
            Save the job with them
          </button>
        )}
        <button type="button" onClick={() => window.print()}>
          Print
        </button>
      </fieldset>
      {clashes === undefined ? null : (
        <div class="notice notice-wide" role="alert">
          <p>
            Somebody else saved meanwhile, and{' '}
            {clashes.length === 1 ? 'one entry' : `${clashes.length} entries`} differ from yours. What only
            one of you changed is kept either way.
          </p>
          <p class="actions">
            <button type="button" onClick={() => void rig.settle('mine')}>
              Keep mine where they differ
            </button>
            <button type="button" onClick={() => void rig.settle('theirs')}>
              Take what was saved
            </button>
          </p>
        </div>
      )}
    </SiteHeader>
  );
}

import type { VNode } from 'preact';
import { UndoButton } from '../../sheet/index.ts';
import { jobPath, nameAddress } from '../../ui/route/index.ts';
import { SiteHeader, usePage } from '../../ui/site/index.ts';
import { useBenchState } from '../state/index.ts';
import { isOvertaken } from './job-save-words.ts';
import { jobTitle } from './job-title.ts';
import { SaveStatus } from './save-status.tsx';
import { useSave } from './use-save.tsx';

/** Head of a page of a job on which the job itself can be changed: its title, where it is kept, and saving. */
export function JobHeader(): VNode {
  const { end } = usePage();
  const title = useBenchState(jobTitle);
  const conflict = useBenchState(isOvertaken);
  const { save, question } = useSave((id) => nameAddress(`${jobPath(id)}/${end}`));
  return (
    <SiteHeader title={title} state={<SaveStatus />}>
      <fieldset class="actions">
        <legend class="unseen">The job as a whole</legend>
        <button type="button" class="primary" onClick={() => save(false)}>
          Save
        </button>
        <UndoButton />
        {conflict ? (
          <button type="button" onClick={() => save(true)}>
            Save as copy
          </button>
        ) : null}
      </fieldset>
      {question}
    </SiteHeader>
  );
}

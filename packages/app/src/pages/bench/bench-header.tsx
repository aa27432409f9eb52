import { API_PATHS, fillPath } from '@furrow/contract';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { fetchCard } from '../../api/index.ts';
import { jobTitle, ReplaceDialog, SaveStatus, useSave } from '../../job/page/index.ts';
import { useBench, useBenchState } from '../../job/state/index.ts';
import { UndoButton } from '../../sheet/index.ts';
import { draftOf, isUnsaved, keepDraft } from '../../sheet/keep/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { goTo, jobPath, nameAddress } from '../../ui/route/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { OpenFileButton } from '../../ui/take-in/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { cardRequest, paperFor } from './card-request.ts';
import { fileName } from './file-name.ts';
import { PasteDialog } from './paste-dialog.tsx';

/** Title and state of the job, and what can be done with it as a whole. */
export function BenchHeader(): VNode {
  const bench = useBench();
  const units = useUnits();
  const title = useBenchState(jobTitle);
  const cardPage = useBenchState((state) =>
    state.saved === undefined || isUnsaved(state) || state.issues.length > 0
      ? undefined
      : `${fillPath(API_PATHS.jobCardPage, { id: state.saved.id })}?units=${units}&paper=${paperFor(units)}&history=${state.history.used ? 'shop' : 'none'}`,
  );
  const [pasting, setPasting] = useState(false);
  const [replacement, setReplacement] = useState<string>();
  const [trouble, setTrouble] = useState<string>();

  const openText = (text: string): void => {
    keepDraft(localStorage, 'new', { text, based_on: 0 });
    goTo('/', { anew: true });
  };
  const offerText = (text: string): void => {
    const kept = draftOf(localStorage, 'new');
    if (kept === undefined || kept.text === text) openText(text);
    else setReplacement(text);
  };
  const { save, question } = useSave((id) => nameAddress(jobPath(id)));
  const fetchPdf = async (): Promise<Blob | undefined> => {
    setTrouble(undefined);
    const reply = await fetchCard(cardRequest(bench, units));
    if (!reply.ok) setTrouble(`No card: ${reply.failure.message}`);
    return reply.ok ? reply.value : undefined;
  };
  const card = async (): Promise<void> => {
    const pdf = await fetchPdf();
    if (pdf !== undefined) download(pdf, fileName(title, 'pdf'));
  };
  const printCard = async (): Promise<void> => {
    // a window opened later than the press would be taken for an unwanted one
    const sheet = window.open(cardPage ?? '', '_blank');
    if (cardPage !== undefined || sheet === null) return;
    const pdf = await fetchPdf();
    if (pdf === undefined) sheet.close();
    else sheet.location.href = URL.createObjectURL(pdf);
  };
  const exportFile = (): void => {
    const { text } = bench.store.get().file;
    download(new Blob([text], { type: 'application/yaml' }), fileName(title, 'yaml'));
  };

  return (
    <SiteHeader title={title} state={<SaveStatus />}>
      <fieldset class="actions">
        <legend class="unseen">The job as a whole</legend>
        <button type="button" class="primary" onClick={() => save(false)}>
          Save
        </button>
        <UndoButton />
        <button type="button" onClick={() => save(true)}>
          Save as copy
        </button>
        <OpenFileButton noun="job" onText={offerText} onTrouble={setTrouble} />
        <button type="button" onClick={() => setPasting(true)}>
          Paste
        </button>
        <button type="button" onClick={exportFile}>
          Export
        </button>
        <button type="button" onClick={() => void printCard()}>
          Print card
        </button>
        <button type="button" onClick={() => void card()}>
          Card as PDF
        </button>
      </fieldset>
      {trouble === undefined ? null : (
        <p class="notice notice-wide" role="alert">
          {trouble}{' '}
          <button type="button" class="quiet" onClick={() => setTrouble(undefined)}>
            dismiss
          </button>
        </p>
      )}
      {question}
      {pasting ? <PasteDialog onText={offerText} onClose={() => setPasting(false)} /> : null}
      {replacement === undefined ? null : (
        <ReplaceDialog onReplace={() => openText(replacement)} onClose={() => setReplacement(undefined)} />
      )}
    </SiteHeader>
  );
}

import type { PaperChoices, PaperList } from '@furrow/contract';
import type { VNode } from 'preact';
import { useCallback, useEffect, useState } from 'preact/hooks';
import { fetchExamples, fetchJob, fetchPapers, type PapersOf, tellPrinted } from '../../api/index.ts';
import { jobPath, PageLink } from '../../ui/route/index.ts';
import { SiteHeader, Waiting } from '../../ui/site/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { ChangesPanel } from './changes-panel.tsx';
import { ChoiceBar } from './choice-bar.tsx';
import { JobHistory } from './job-history.tsx';
import { PaperTable } from './paper-table.tsx';
import { Preview } from './preview.tsx';
import './style.css';

interface PapersPageProps {
  /** Id of a saved job. */
  readonly id: string | undefined;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** The papers of a job: to look at, to print, and whether those that were printed are still good. */
export function PapersPage({ id, demo }: PapersPageProps): VNode {
  const [title, setTitle] = useState<{ readonly text: string; readonly trouble: boolean }>();
  useEffect(() => {
    let left = false;
    void titleOf(id, demo).then((found) => {
      if (!left) setTitle(found);
    });
    return () => {
      left = true;
    };
  }, [id, demo]);
  if (title === undefined) return <Waiting text="Opening the job." />;
  if (title.trouble) return <Waiting text={title.text} trouble />;
  return (
    <>
      <SiteHeader title={title.text} />
      <Papers id={id} demo={demo} />
    </>
  );
}

function Papers({ id, demo }: { readonly id: string | undefined; readonly demo: string }): VNode {
  const units = useUnits();
  const [sheet, setSheet] = useState<PaperChoices['paper']>();
  const [kit, setKit] = useState<PaperChoices['kit']>('shop');
  const [history, setHistory] = useState<PaperChoices['history']>('shop');
  const [list, setList] = useState<PaperList>();
  const [trouble, setTrouble] = useState<string>();
  const [shown, setShown] = useState('set-up-card');
  const paper = sheet ?? (units === 'inch' ? 'letter' : 'a4');
  const choices: PaperChoices = { units, paper, kit, history };
  const of: PapersOf = id === undefined ? { name: demo } : { id };
  const load = useCallback(async (): Promise<void> => {
    const reply = await fetchPapers(id === undefined ? { name: demo } : { id }, {
      units,
      paper,
      kit,
      history,
    });
    setTrouble(reply.ok ? undefined : reply.failure.message);
    if (reply.ok) setList(reply.value);
  }, [id, demo, units, paper, kit, history]);
  useEffect(() => void load(), [load]);
  const show = (page: string): void => {
    setShown(page);
    // where the paper stands below the list it would otherwise change unseen
    const preview = document.getElementById('paper-preview');
    if (preview !== null && preview.getBoundingClientRect().top > window.innerHeight / 2)
      preview.scrollIntoView({ block: 'start' });
  };
  const printed = async (file: string): Promise<void> => {
    if (id === undefined || list === undefined || list.revision_number === null) return;
    setTrouble(undefined);
    const { revision_number, kit_revision, knowledge_id } = list;
    const reply = await tellPrinted(id, { file, revision_number, kit_revision, knowledge_id });
    if (reply.ok) await load();
    else setTrouble(reply.failure.message);
  };
  return (
    <main class="wide-page papers-page" id="result" tabIndex={-1}>
      <div class="papers-list">
        <ChoiceBar
          paper={paper}
          kit={kit}
          history={history}
          onPaper={setSheet}
          onKit={setKit}
          onHistory={setHistory}
        />
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}{' '}
            <PageLink to={id === undefined ? '/' : jobPath(id)}>Look at the job on the bench</PageLink>.
          </p>
        )}
        {list === undefined ? (
          trouble === undefined ? (
            <p role="status">Making the list.</p>
          ) : null
        ) : (
          <>
            <p class="panel-lead">
              {list.revision_number === null
                ? 'Papers of the demo job as it comes with the program. Save it as your own to keep track of what was printed.'
                : `Made from saved revision ${list.revision_number}; what is not saved yet is not on them.`}
            </p>
            <ChangesPanel papers={list.papers} />
            <PaperTable
              list={list}
              of={of}
              choices={choices}
              shown={shown}
              onShow={show}
              onPrinted={printed}
              onTrouble={setTrouble}
            />
            {id === undefined || list.revision_number === null ? null : (
              <JobHistory id={id} newest={list.revision_number} units={units} />
            )}
          </>
        )}
      </div>
      {list === undefined ? null : <Preview of={of} page={shown} choices={choices} list={list} />}
    </main>
  );
}

/** Title of the job, or why it cannot be opened. */
async function titleOf(
  id: string | undefined,
  demo: string,
): Promise<{ readonly text: string; readonly trouble: boolean }> {
  if (id !== undefined) {
    const reply = await fetchJob(id);
    return reply.ok
      ? { text: reply.value.title, trouble: false }
      : { text: reply.failure.message, trouble: true };
  }
  const reply = await fetchExamples();
  if (!reply.ok) return { text: reply.failure.message, trouble: true };
  const found = reply.value.find(({ name }) => name === demo);
  return found === undefined
    ? { text: 'There is no such demo job here.', trouble: true }
    : { text: found.title, trouble: false };
}

import type { Example } from '@furrow/contract';
import {
  freeId,
  type Issue,
  newEntries,
  withCorrected,
  withEntry,
  withPutBack,
  withTakenOut,
  writtenEntries,
} from '@furrow/engine';
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { useOpenedJob } from '../../job/page/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { OpenFileButton } from '../../ui/take-in/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { EntryEditor } from './entry-editor.tsx';
import { type EntryForm, entryOf, formOf, newForm } from './entry-form.ts';
import { EntryTable } from './entry-table.tsx';
import { areTrialsUnsaved, type KnowledgeDesk } from './knowledge-desk.ts';
import { ReasonDialog } from './reason-dialog.tsx';
import { ReportPanels } from './report-panels.tsx';
import { useReport } from './use-report.ts';

interface KnowledgeViewProps {
  readonly desk: KnowledgeDesk;
  /** The invented history of the demo shop, shown as long as the shop has none of its own. */
  readonly demo: Example | undefined;
}

/** What is asked of a person before something is changed. */
type Asked = { readonly id: string; readonly to: 'take out' | 'put back' } | undefined;

/** What is being written: a new entry, or one that is corrected. */
interface Writing {
  readonly form: EntryForm;
  /** The entry that is corrected; undefined for a new one. */
  readonly id: string | undefined;
}

/** What the shop knows, and a form for what was tried or gauged. */
export function KnowledgeView({ desk, demo }: KnowledgeViewProps): VNode {
  const units = useUnits();
  const state = useSelected(desk.store, (now) => now);
  const { saved = desk.opened, message, trouble } = state;
  const waits = areTrialsUnsaved(state) && state.save.is !== 'saving';
  const own = state.text !== '';
  const text = own ? state.text : (demo?.text ?? '');
  const opened = useOpenedJob();
  const bench = opened !== undefined && 'bench' in opened ? opened.bench : undefined;
  const planned = bench?.store.get().planned;
  const job = useMemo(
    () => (planned === undefined ? undefined : { read: planned.read, basis: planned.answer.basis }),
    [planned],
  );
  const learned = useReport(text === '' ? undefined : text, job);
  const [writing, setWriting] = useState<Writing>();
  const [asked, setAsked] = useState<Asked>();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [refused, setRefused] = useState<string>();
  const [shop, setShop] = useState('our-shop');

  const begin = (kind: EntryForm['kind']): void => {
    const planned = bench?.store.get().planned;
    const plan = planned?.answer.plan;
    const open = planned === undefined || plan === undefined ? undefined : { read: planned.read, plan };
    setIssues([]);
    setWriting({ form: newForm(kind, today(), units, open), id: undefined });
  };
  const apply = async (edit: (text: string) => string, done: string, adds = false): Promise<boolean> => {
    const wrong = await desk.apply({ edit, done, shop, adds });
    setIssues(wrong ?? []);
    return wrong === undefined;
  };
  const enter = async ({ form, id }: Writing, reason: string): Promise<void> => {
    const change = { date: today(), reason };
    const ok =
      id === undefined
        ? await apply(
            (before) => withEntry(before, entryOf(form, freeId(before, form.kind), units)),
            `The ${form.kind} is entered; every plan from now on is made with it.`,
            true,
          )
        : await apply(
            (before) => withCorrected(before, entryOf(form, id, units), change),
            `${id} is corrected; what it said before is in the earlier revision.`,
          );
    if (ok) setWriting(undefined);
  };
  const takeIn = async (other: string): Promise<void> => {
    setRefused(undefined);
    const fresh = newEntries(state.text, other);
    if (fresh.length === 0) setRefused('The file has no entry that is not here already.');
    else
      await apply(
        (before) => fresh.reduce(withEntry, before),
        `${fresh.length} entries were taken over from the file.`,
        true,
      );
  };
  const settle = async (reason: string): Promise<void> => {
    if (asked === undefined) return;
    const { id, to } = asked;
    setAsked(undefined);
    const change = { date: today(), reason };
    if (to === 'take out') {
      await apply(
        (before) => withTakenOut(before, id, change),
        `${id} is taken out: it is kept, and counts no more.`,
      );
    } else await apply((before) => withPutBack(before, id, change), `${id} counts again.`);
  };

  return (
    <>
      <SiteHeader
        title={own ? saved.title : 'An invented history'}
        state={
          <p class="save-state" role="status" aria-label="Save state">
            {waits
              ? 'Entered and kept on this device: it counts in plans once it is sent, which happens by itself.'
              : message !== ''
                ? message
                : own
                  ? `saved as revision ${saved.revision_number}`
                  : 'nothing of this shop’s own yet'}
          </p>
        }
      >
        <fieldset class="actions">
          <legend class="unseen">What was tried and gauged</legend>
          <button type="button" class="primary" onClick={() => begin('trial')}>
            Enter a trial
          </button>
          <button type="button" onClick={() => begin('job')}>
            Enter a finished job
          </button>
          <OpenFileButton noun="trials" onText={(other) => void takeIn(other)} onTrouble={setRefused} />
          {own ? (
            <button
              type="button"
              onClick={() => download(new Blob([state.text], { type: 'application/yaml' }), 'trials.yaml')}
            >
              Export
            </button>
          ) : null}
        </fieldset>
      </SiteHeader>
      <main class="wide-page knowledge-page" id="result" tabIndex={-1}>
        {own || demo === undefined ? null : (
          <p class="notice knowledge-invented">
            <strong>Invented, to show what a history does.</strong> No cut of it was ever made. Demo jobs are
            planned with it; jobs of your own are planned as in a shop without history until you enter one.
          </p>
        )}
        {[trouble, refused].map((words) =>
          words === undefined ? null : (
            <p key={words} class="notice" role="alert">
              {words}
            </p>
          ),
        )}
        {writing === undefined ? (
          issues.length === 0 ? null : (
            <WrongFile issues={issues} />
          )
        ) : (
          <EntryEditor
            form={writing.form}
            correcting={writing.id}
            shop={own ? undefined : shop}
            onShop={setShop}
            issues={issues}
            onChange={(form) => setWriting({ ...writing, form })}
            onEnter={(reason) => void enter(writing, reason)}
            onCancel={() => {
              setWriting(undefined);
              setIssues([]);
            }}
          />
        )}
        {text === '' ? null : <ReportPanels learned={learned} />}
        {text === '' ? null : (
          <EntryTable
            text={text}
            own={own}
            onCorrect={(id) => {
              const entry = writtenEntries(text).find((each) => each.id === id);
              if (entry !== undefined) setWriting({ form: formOf(entry), id });
              setIssues([]);
              window.scrollTo({ top: 0 });
            }}
            onTakeOut={(id) => setAsked({ id, to: 'take out' })}
            onPutBack={(id) => setAsked({ id, to: 'put back' })}
          />
        )}
        {asked === undefined ? null : (
          <ReasonDialog
            title={asked.to === 'take out' ? `Take ${asked.id} out?` : `Count ${asked.id} again?`}
            lead={
              asked.to === 'take out'
                ? 'It stays in the file, struck through, and counts no more. Say why, for whoever reads it later.'
                : 'Say why it counts after all.'
            }
            act={asked.to === 'take out' ? 'Take out' : 'Count it'}
            onReason={(reason) => void settle(reason)}
            onClose={() => setAsked(undefined)}
          />
        )}
      </main>
    </>
  );
}

/** What is wrong with a file that was to be taken over. */
function WrongFile({ issues }: { readonly issues: readonly Issue[] }): VNode {
  return (
    <div class="issue-summary" role="alert">
      <p>Nothing was saved:</p>
      <ul>
        {issues.slice(0, 5).map(({ message, path }) => (
          <li key={`${path} ${message}`}>
            {message} <span class="issue-of">{path}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The day on this computer, as files write it. */
function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

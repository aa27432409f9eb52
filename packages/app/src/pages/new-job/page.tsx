import { type Issue, METAL_FAMILIES, readJob, type UnitSystem } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { ReplaceDialog } from '../../job/page/index.ts';
import { jobFieldAt } from '../../sheet/document/index.ts';
import { draftOf, keepDraft } from '../../sheet/keep/index.ts';
import { AmountEntry, Choices, Question, QuestionForm, Wrong } from '../../sheet/questions/index.ts';
import { goTo } from '../../ui/route/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import {
  ELECTRODES,
  GAUGES,
  type NewJob,
  newJobText,
  SEAM_UNIT,
  UNANSWERED,
  usualWidth,
  WORKS,
} from './new-job-text.ts';

/** The few questions that a job of one's own begins with; the rest is filled in on the bench where it matters. */
export function NewJobPage(): VNode {
  const units = useUnits();
  const [job, setJob] = useState<NewJob>(UNANSWERED);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [replacement, setReplacement] = useState<string>();
  const answer = (part: Partial<NewJob>): void => {
    const next = { ...job, ...part };
    setJob(next);
    // once asked, what was mended goes at once
    if (issues.length > 0) setIssues(issuesOf(next, units));
  };
  const open = (text: string): void => {
    keepDraft(ownMemory(), 'new', { text, based_on: 0 });
    goTo('/', { anew: true });
  };
  const plan = (): void => {
    const text = newJobText(job, units);
    const found = issuesOf(job, units);
    setIssues(found);
    if (found.length > 0)
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
    else if (draftOf(ownMemory(), 'new') === undefined) open(text);
    else setReplacement(text);
  };
  const wrong = (path: string): Issue | undefined => issues.find((issue) => issue.path === path);
  const elsewhere = issues.filter(({ path }) => !ASKED.has(path));
  const usual = usualWidth(job, units);
  const amount = (
    key: AmountKey,
    path: string,
    label: string,
    more: { unit?: string; usual?: string } = {},
  ): VNode => (
    <AmountEntry
      label={label}
      field={jobFieldAt(path)}
      value={job[key]}
      issue={wrong(path)}
      onValue={(text) => answer({ [key]: text })}
      {...more}
    />
  );
  return (
    <>
      <SiteHeader />
      <main class="plain-page" id="result" tabIndex={-1}>
        <QuestionForm
          name="New job"
          submit="Plan it"
          aside="Everything else starts from defaults that are listed with the plan, and is filled in on the bench."
          onSubmit={plan}
        >
          <Question title="What is it for?">
            <Choices name="work" value={job.work} of={WORKS} onValue={(work) => answer({ work })} />
          </Question>
          <Question title="Which seam, and how long?">
            <label class="question-amount">
              Name of the job
              <input
                type="text"
                value={job.title}
                placeholder="as it is called in the shop"
                onInput={(event) => answer({ title: event.currentTarget.value })}
              />
            </label>
            {amount('length', 'seam.length', 'Length', { unit: SEAM_UNIT[units] })}
          </Question>
          <Question title="Which plate?">
            <label class="question-amount">
              Metal
              <select value={job.metal} onChange={(event) => answer({ metal: event.currentTarget.value })}>
                {METAL_FAMILIES.map((metal) => (
                  <option key={metal} value={metal}>
                    {metal.replaceAll('_', ' ')}
                  </option>
                ))}
              </select>
            </label>
            {amount('thickness', 'plate.thickness', 'Thickness')}
          </Question>
          <Question title="How deep?">
            {amount('depth', 'groove.depth.wanted', 'Depth')}
            {amount('plus', 'groove.depth.plus', 'Deeper by at most')}
            {amount('minus', 'groove.depth.minus', 'Shallower by at most', { usual: '0' })}
          </Question>
          <Question
            title="How wide at the surface?"
            note="Left open: what the electrodes at hand cut in one track."
          >
            {amount('widthLeast', 'groove.width.least', 'At least', { usual: usual.least })}
            {amount('widthMost', 'groove.width.most', 'At most', { usual: usual.most })}
          </Question>
          <Question title="Which electrodes are at hand?">
            <div class="choices">
              {ELECTRODES.map((size) => (
                <label key={size} class="choice">
                  <input
                    type="checkbox"
                    checked={job.electrodes.includes(size)}
                    onChange={(event) =>
                      answer({
                        electrodes: ELECTRODES.filter((each) =>
                          each === size ? event.currentTarget.checked : job.electrodes.includes(each),
                        ),
                      })
                    }
                  />
                  {size}
                </label>
              ))}
            </div>
            <Wrong issue={wrong('kit.electrodes')} />
          </Question>
          <Question title="How much current is there?">
            {amount('most', 'kit.current.most', 'Source, at most')}
          </Question>
          <Question title="What is depth read with?">
            <Choices
              name="gauge"
              value={job.gauge}
              of={GAUGES.map(({ id, title, sd }) => ({
                id,
                title,
                note: `one reading good to ${sd[units]}`,
              }))}
              onValue={(gauge) => answer({ gauge })}
            />
          </Question>
          {elsewhere.map((issue) => (
            <Wrong key={`${issue.path} ${issue.message}`} issue={issue} />
          ))}
        </QuestionForm>
      </main>
      {replacement === undefined ? null : (
        <ReplaceDialog onReplace={() => open(replacement)} onClose={() => setReplacement(undefined)} />
      )}
    </>
  );
}

type AmountKey = 'length' | 'thickness' | 'depth' | 'plus' | 'minus' | 'widthLeast' | 'widthMost' | 'most';

/** Paths of the file that have a question of their own, beside which their issues stand. */
const ASKED: ReadonlySet<string> = new Set([
  'seam.length',
  'plate.thickness',
  'groove.depth.wanted',
  'groove.depth.plus',
  'groove.depth.minus',
  'groove.width.least',
  'groove.width.most',
  'kit.electrodes',
  'kit.current.most',
]);

/** What is still asked for or cannot be read; the reader of the file asks for a length only where all else is there. */
function issuesOf(job: NewJob, units: UnitSystem): readonly Issue[] {
  const read = readJob(newJobText(job, units), units);
  const found = read.ok ? [] : read.issues;
  const asked = job.length.trim() === '' && !found.some(({ path }) => path === 'seam.length');
  return asked
    ? [...found, { code: 'JOB_FIELD_MISSING', path: 'seam.length', message: 'The length is asked for.' }]
    : found;
}

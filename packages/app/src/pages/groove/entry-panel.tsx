import { formatStated } from '@furrow/engine';
import { spreadLength } from '@furrow/papers';
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { NumberPad } from '../../ui/number-pad/index.ts';
import { PageLink } from '../../ui/route/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { EMPTY_ENTRY, ENTRY_FIELDS, type EntryField, entryIssues, stationOf, unitOf } from './entry.ts';
import { timeOf } from './entry-name.ts';
import { useGroove } from './groove-context.ts';

interface EntryPanelProps {
  /** A place that is to be measured; the number changes with each wish. */
  readonly wanted: { readonly at_mm: number; readonly wish: number } | undefined;
}

/** Who measured, kept from reading to reading on this computer. */
const WHO = 'furrow.gauged_by';

/** What was measured at one place, entered with a thumb: keys large enough for a glove, units beside each number. */
export function EntryPanel({ wanted }: EntryPanelProps): VNode {
  const units = useUnits();
  const desk = useReadingsDesk();
  const [entry, setEntry] = useState(EMPTY_ENTRY);
  const [at, setAt] = useState<EntryField>('at');
  const [by, setBy] = useState(() => ownMemory().getItem(WHO) ?? '');
  const [tried, setTried] = useState(false);
  const [told, setTold] = useState('');
  const recuts = useReadings((state) => state.read?.readings.recuts?.length) ?? 0;
  const broken = useReadings((state) => state.file.broken);
  const length = useBenchState((state) => state.planned?.read.job.seam.length);
  const passes = useBenchState((state) => state.planned?.answer.plan?.passes) ?? [];
  const [afterPass, setAfterPass] = useState<number>();
  const reading = useGroove((state) => state.shown?.report.inputs);
  const boxes = useRef<Partial<Record<EntryField, HTMLInputElement | null>>>({});
  const focus = (field: EntryField): void => {
    setAt(field);
    boxes.current[field]?.focus();
  };
  useEffect(() => {
    if (wanted === undefined) return;
    setEntry({ ...EMPTY_ENTRY, at: formatStated(wanted.at_mm, 'mm', units, 'length') });
    setTried(false);
    focus('depth');
  }, [wanted?.wish]);
  const set = (field: EntryField, value: string): void => {
    setEntry((before) => ({ ...before, [field]: value }));
    setTold('');
  };
  const press = (key: string): void =>
    set(at, key === 'back' ? entry[at].slice(0, -1) : `${entry[at]}${key}`);
  const issues = entryIssues(entry, units, length);
  const shownIssue = (field: EntryField): string | undefined =>
    tried || entry[field] !== '' ? issues[field] : undefined;
  const add = (): void => {
    setTried(true);
    const wrong = ENTRY_FIELDS.find(({ field }) => issues[field] !== undefined);
    if (wrong !== undefined) {
      focus(wrong.field);
      return;
    }
    desk.change([
      {
        do: 'append',
        path: ['stations'],
        entry: stationOf(entry, units, { by, when: timeOf(new Date()), recuts, afterPass }),
      },
    ]);
    setTold(`Kept: ${entry.depth} at ${entry.at}.`);
    setEntry(EMPTY_ENTRY);
    setTried(false);
    focus('at');
  };
  return (
    <section class="panel groove-entry" aria-labelledby="entry-title">
      <header class="panel-head">
        <h2 id="entry-title">Enter a reading</h2>
        {recuts === 0 ? null : <p class="caption">After recut {recuts}.</p>}
      </header>
      <form
        class="entry-parts"
        autocomplete="off"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <div class="entry-boxes">
          {ENTRY_FIELDS.map(({ field, title, required }) => {
            const issue = shownIssue(field);
            return (
              <div
                key={field}
                class={`entry-box${at === field ? ' entry-at' : ''}${issue === undefined ? '' : ' field-wrong'}`}
              >
                <label for={`entry-${field}`}>
                  {title}
                  {required ? ' *' : ''}
                </label>
                <span class="entry-with-unit">
                  <input
                    id={`entry-${field}`}
                    ref={(element) => {
                      boxes.current[field] = element;
                    }}
                    type="text"
                    inputMode="none"
                    value={entry[field]}
                    spellcheck={false}
                    aria-invalid={issue !== undefined}
                    aria-describedby={`entry-${field}-issue`}
                    onFocus={() => setAt(field)}
                    onInput={(event) => set(field, event.currentTarget.value)}
                  />
                  <span class="entry-unit">{unitOf(field, units)}</span>
                </span>
                <p id={`entry-${field}-issue`} class="field-issue" hidden={issue === undefined}>
                  {issue ?? ''}
                </p>
              </div>
            );
          })}
          {passes.length < 2 ? null : (
            <label class="entry-note">
              Gauged after
              <select
                value={afterPass ?? ''}
                onChange={(event) =>
                  setAfterPass(
                    event.currentTarget.value === '' ? undefined : Number(event.currentTarget.value),
                  )
                }
              >
                <option value="">all passes</option>
                {passes.slice(0, -1).map(({ number }) => (
                  <option key={number} value={number}>
                    pass {number}, others still to come
                  </option>
                ))}
              </select>
            </label>
          )}
          <label class="entry-note">
            Remark
            <input
              type="text"
              value={entry.note}
              onInput={(event) => {
                const { value } = event.currentTarget;
                setEntry((before) => ({ ...before, note: value }));
              }}
            />
          </label>
          <label class="entry-note">
            Who
            <input
              type="text"
              value={by}
              onInput={(event) => {
                setBy(event.currentTarget.value);
                ownMemory().setItem(WHO, event.currentTarget.value);
              }}
            />
          </label>
        </div>
        <NumberPad fractions={units === 'inch'} onPress={press} />
        <button type="submit" class="primary big" disabled={broken}>
          Keep this reading
        </button>
      </form>
      <p class="caption">
        {reading === undefined || reading.gauge_u_mm === null
          ? null
          : `One depth counts as good to ± ${spreadLength(1.96 * reading.gauge_u_mm, units)} (95 %): ${reading.gauge_u_from}. `}
        <PageLink to="/gauge">Study and check of the gauge</PageLink>
      </p>
      <p role="status" aria-label="Entered">
        {told}
      </p>
    </section>
  );
}

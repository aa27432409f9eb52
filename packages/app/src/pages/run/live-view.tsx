import type { RunBegin } from '@furrow/contract';
import { formatAmount, fromUnit, sentenceText, type UnitSystem } from '@furrow/engine';
import { elapsedWords, eventName } from '@furrow/papers';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { livePath } from '../../api/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { isUnsaved } from '../../sheet/keep/index.ts';
import { Figure } from '../../ui/figure/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import type { FollowedRun } from './live-run.ts';
import { LiveSourceForm } from './live-source-form.tsx';
import { useLive, useLiveDesk, useRun } from './run-context.ts';

/** Age from which the last reading is old [ms]. */
const OLD = 2000;
/** How often its age is shown anew [ms]. */
const TICK = 200;

/** The run that is under way, or how to begin one. */
export function LiveRun(): VNode | null {
  const followed = useLive((state) => state.followed);
  const doing = useLive((state) => state.doing);
  const trouble = useLive((state) => state.trouble);
  const saved = useBenchState((state) => state.saved !== undefined);
  const unsaved = useBenchState(isUnsaved);
  const desk = useLiveDesk();
  if (!saved) return null;
  const begin = (name: string, source: RunBegin['source']): void => void desk.begin(name, source);
  const state = (
    <p role="status" aria-label="Live run" class={trouble === undefined ? 'caption' : 'status-unread'}>
      {trouble ?? doing ?? ''}
    </p>
  );
  if (followed !== undefined)
    return (
      <section class="panel live-run" aria-labelledby="live-run-title">
        <header class="panel-head">
          <h2 id="live-run-title">Live: {followed.run.name}</h2>
          <p class="caption">{followed.run.source}; the numbers are as they came.</p>
        </header>
        <Followed followed={followed} />
        <div class="log-source-row">
          <button type="button" disabled={doing !== undefined} onClick={() => void desk.end()}>
            End the run
          </button>
          {state}
        </div>
      </section>
    );
  return (
    <details class="panel live-begin">
      <summary>Watch a run live</summary>
      {unsaved ? (
        <p class="panel-lead">Save the job first: a run is kept with the revision that is run.</p>
      ) : (
        <LiveSourceForm disabled={doing !== undefined} onBegin={begin} />
      )}
      {state}
    </details>
  );
}

function Followed({ followed }: { readonly followed: FollowedRun }): VNode {
  const { run, last, told, connected } = followed;
  const units = useUnits();
  const shownEvents = useRun((state) => (state.log?.live === true ? state.shown?.report.events : undefined));
  const bad = (shownEvents ?? []).filter(({ kind }) => kind !== 'touch_down').length;
  const post = `${location.origin}${livePath(run.id, 'runFrames')}`;
  return (
    <>
      {run.rehearsal ? <p class="run-mark">Rehearsal: no rig is run.</p> : null}
      <dl class="headline live-figures">
        <LastAge followed={followed} />
        {Object.entries(last).map(([name, value]) => (
          <Figure key={name} name={name} value={String(Number(value.toPrecision(5)))} note="" />
        ))}
      </dl>
      {told === undefined || told.deviations.length === 0 ? null : (
        <ul class="live-deviations" role="alert" aria-label="Deviations from the plan now">
          {told.deviations.map(({ kind, since_s, duration_s, at_mm, says }) => (
            <li key={`${kind} ${since_s}`}>
              <strong>{eventName(kind)}</strong> for {formatAmount(duration_s, 'time', units)} now, since{' '}
              {elapsedWords(since_s)}
              {placeWords(at_mm, units)}
              {kind === 'arc_out' ? '.' : `. ${sentenceText(says, units)}`}
            </li>
          ))}
        </ul>
      )}
      {told === undefined || told.over.length === 0 ? null : (
        <section class="live-over">
          <h3>Over again</h3>
          <ul aria-label="Deviations that are over">
            {[...told.over].reverse().map(({ kind, since_s, duration_s, at_mm, says }) => (
              <li key={`${kind} ${since_s}`}>
                <strong>{eventName(kind)}</strong> at {elapsedWords(since_s)} for{' '}
                {formatAmount(duration_s, 'time', units)}
                {placeWords(at_mm, units)}
                {kind === 'arc_out' ? '.' : `. ${sentenceText(says, units)}`}
              </li>
            ))}
          </ul>
        </section>
      )}
      <ul class="run-choices">
        {connected ? null : (
          <li class="status-unread">
            The line to the program is broken; it is tried again. What comes in meanwhile is not lost.
          </li>
        )}
        {told?.trouble == null ? null : <li class="status-unread">{told.trouble}</li>}
        <li>
          {told === undefined
            ? 'waiting for the program'
            : `${told.readings} readings came in since the program was started; ${told.says}`}
        </li>
        {told === undefined || told.refused === 0 ? null : (
          <li>
            {told.refused} frames were not taken, the last as {told.last_refusal}
          </li>
        )}
        {bad > 0 ? (
          <li>
            {bad} {bad === 1 ? 'event' : 'events'} so far: see the verdict and the events below.
          </li>
        ) : told?.deviations.length === 0 && told.over.length === 0 ? (
          <li>No deviation from the plan so far.</li>
        ) : null}
        {run.source === 'newline JSON over HTTP' ? (
          <li>
            Send readings as newline JSON by POST to <code>{post}</code>
          </li>
        ) : null}
      </ul>
    </>
  );
}

/** Where a deviation began, where that is known. */
function placeWords(at_mm: number | null, units: UnitSystem): string {
  return at_mm === null ? '' : `, from ${formatAmount(fromUnit(at_mm, 'mm'), 'seam_place', units)}`;
}

/** How old the last reading is, also while none comes. */
function LastAge({ followed: { lastAt } }: { readonly followed: FollowedRun }): VNode {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), TICK);
    return () => clearInterval(timer);
  }, []);
  const age = lastAt === undefined ? undefined : Math.max(0, now - lastAt);
  return (
    <Figure
      name="Last reading"
      value={age === undefined ? 'none yet' : `${(age / 1000).toFixed(1)} s ago`}
      note={age !== undefined && age > OLD ? 'nothing comes in' : ''}
    />
  );
}

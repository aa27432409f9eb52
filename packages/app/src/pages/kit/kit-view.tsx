import type { Example } from '@furrow/contract';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { type KitDesk, kitStatusWords } from '../../job/kit/index.ts';
import { FormView } from '../../sheet/form/index.ts';
import { isUnsaved, SavedMeanwhile, useLeaveGuard } from '../../sheet/keep/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { KitHeader } from './kit-header.tsx';
import { KitHistory } from './kit-history.tsx';
import { KitQuestions } from './kit-questions.tsx';
import { KitSummary } from './kit-summary.tsx';

interface KitViewProps {
  readonly desk: KitDesk;
  readonly examples: readonly Example[];
}

/** The kit to fill in, and beside it what it amounts to. */
export function KitView({ desk, examples }: KitViewProps): VNode {
  useLeaveGuard(useSelected(desk.store, isUnsaved));
  const status = useSelected(desk.store, kitStatusWords);
  const wrong = useSelected(desk.store, (state) => state.issues.length > 0);
  const empty = useSelected(desk.store, (state) => state.file.text.trim() === '');
  // a kit once begun keeps its form, however much of it is taken out
  const [begun, setBegun] = useState(!empty);
  if (!begun && !empty) setBegun(true);
  const form = !begun ? null : (
    <section key="form" class="job-pane kit-pane" aria-labelledby="kit-form-title">
      <h2 class="unseen" id="kit-form-title">
        Kit
      </h2>
      <FormView />
    </section>
  );
  const result = (
    <main key="result" class="result-pane" id="result" tabIndex={-1}>
      <Notices desk={desk} />
      <p class={`status${wrong ? ' status-mistakes' : ''}`} role="status" aria-live="polite" aria-label="Kit">
        {status}
      </p>
      {!begun ? (
        <Begin desk={desk} examples={examples} />
      ) : (
        <>
          <KitSummary desk={desk} />
          <KitHistory desk={desk} />
        </>
      )}
    </main>
  );
  return (
    <div class="bench">
      <KitHeader desk={desk} />
      <div class={begun ? 'bench-panes' : 'plain-page'}>{[form, result]}</div>
    </div>
  );
}

/** What there is to do while no kit is described. */
function Begin({ desk, examples }: KitViewProps): VNode {
  return (
    <div class="result-details">
      <section class="panel" aria-labelledby="kit-begin-title">
        <header class="panel-head">
          <h2 id="kit-begin-title">Describe the kit</h2>
        </header>
        <p>
          With the shop’s power sources, leads and air described, every plan is held to what they can carry,
          and the readings to expect at the rig are told. Answer six questions, or begin otherwise:
        </p>
        <ul class="demo-list">
          {examples.map(({ name, title, text }) => (
            <li key={name}>
              <button type="button" onClick={() => desk.setText(text)}>
                Begin with {title}
              </button>
            </li>
          ))}
          <li>
            <button type="button" onClick={() => desk.setText('furrow_kit: 1\n')}>
              Begin with an empty form
            </button>
          </li>
        </ul>
      </section>
      <KitQuestions onText={desk.setText} />
    </div>
  );
}

function Notices({ desk }: { readonly desk: KitDesk }): VNode | null {
  const restored = useSelected(desk.store, (state) => state.restored);
  const newer = useSelected(desk.store, (state) => state.newer);
  if (newer !== undefined) return <SavedMeanwhile what="kit" newer={newer} onSettle={desk.settle} />;
  if (!restored) return null;
  return (
    <p class="notice">
      Unsaved changes of your last visit are back.{' '}
      <button type="button" class="quiet" onClick={() => desk.discard()}>
        Discard them
      </button>
    </p>
  );
}

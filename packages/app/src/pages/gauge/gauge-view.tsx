import { PROGRAM_VERSION } from '@furrow/contract';
import { answerGauge, type ReadGauge } from '@furrow/engine';
import { gaugeStudyBlocks } from '@furrow/papers/blocks';
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { FormView } from '../../sheet/form/index.ts';
import { UndoButton } from '../../sheet/index.ts';
import { type KeptSheet, SavedMeanwhile, saveWords } from '../../sheet/keep/index.ts';
import { BlockList } from '../../ui/block/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { OpenFileButton } from '../../ui/take-in/index.ts';
import { useUnits } from '../../ui/theme/index.ts';

/** What a gauge file begins with: a name, a step, and one check to be filled in. */
const BEGINNING = `furrow_gauge: 1
gauge: depth gauge
resolution: 0.1 mm
`;

/** What study and checks say of the gauge first, then the form. */
export function GaugeView({ desk }: { readonly desk: KeptSheet<ReadGauge> }): VNode {
  const units = useUnits();
  const read = useSelected(desk.store, (state) => state.read);
  const empty = useSelected(desk.store, (state) => state.file.text.trim() === '');
  const newer = useSelected(desk.store, (state) => state.newer);
  const words = useSelected(desk.store, saveWords);
  const [trouble, setTrouble] = useState<string>();
  const report = useMemo(() => (read === undefined ? undefined : answerGauge(read, PROGRAM_VERSION)), [read]);
  return (
    <>
      <SiteHeader />
      <main class="wide-page gauge-page" id="result" tabIndex={-1}>
        <p role="status" aria-label="Gauge kept">
          Gauge: {words}
        </p>
        <SavedMeanwhile what="gauge" newer={newer} onSettle={desk.settle} />
        <section class="panel" aria-labelledby="gauge-says-title">
          <h2 id="gauge-says-title">What study and checks say</h2>
          {report === undefined ? (
            <p>
              Nothing is told of the shop’s gauge yet: readings count with the spread that each job states. A
              study and a check against a block, entered here once, count for every job.
            </p>
          ) : (
            <BlockList blocks={gaugeStudyBlocks(report, units)} />
          )}
        </section>
        <section class="panel" aria-labelledby="gauge-title">
          <header class="panel-head">
            <h2 id="gauge-title">Study and checks</h2>
            <p class="caption">
              A crossed study: every hand reads every part as often. A nested one: blocks read over days and
              runs. A check: the gauge held against a block before it is used.
            </p>
          </header>
          <p class="gauge-actions">
            {empty ? (
              <button type="button" class="primary" onClick={() => desk.setText(BEGINNING)}>
                Begin
              </button>
            ) : null}
            <UndoButton />
            <OpenFileButton noun="gauge" onText={desk.setText} onTrouble={setTrouble} />
            <button
              type="button"
              disabled={empty}
              onClick={() =>
                download(new Blob([desk.store.get().file.text], { type: 'application/yaml' }), 'gauge.yaml')
              }
            >
              Export
            </button>
          </p>
          {trouble === undefined ? null : (
            <p class="notice" role="alert">
              {trouble}
            </p>
          )}
          <FormView />
        </section>
      </main>
    </>
  );
}

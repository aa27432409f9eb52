import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { RestoredNotice } from '../../job/page/index.ts';
import {
  HistoryBar,
  KitNotice,
  OutdatedBox,
  ResultDetails,
  ResultHead,
  ResultStatus,
} from '../../job/result/index.ts';
import { SeamStripView } from '../../job/seam-strip/index.ts';
import { SectionView } from '../../job/section/index.ts';
import { FormView } from '../../sheet/form/index.ts';
import { useMedia } from '../../ui/theme/index.ts';
import { BenchHeader } from './bench-header.tsx';

/** Width from which form and result stand side by side. */
const SIDE_BY_SIDE = '(min-width: 1100px)';

/** The bench: the job to fill in, and beside it the drawings and the result. */
export function BenchView(): VNode {
  const wide = useMedia(SIDE_BY_SIDE);
  const job = (
    <section key="job" class="job-pane" id="job" tabIndex={-1} aria-labelledby="job-title">
      <h2 class="unseen" id="job-title">
        Job
      </h2>
      <FormView brief={!wide} />
    </section>
  );
  const result = (
    <main key="result" class="result-pane" id="result" tabIndex={-1}>
      <RestoredNotice />
      <ResultStatus />
      <div class="plan-rests">
        <KitNotice />
        <HistoryBar />
      </div>
      <div class="result-top">
        <SectionView />
        <OutdatedBox class="result-head">
          <ResultHead />
        </OutdatedBox>
      </div>
      {wide ? null : job}
      <SeamStripView />
      <OutdatedBox class="result-details">
        <ResultDetails />
      </OutdatedBox>
    </main>
  );
  return (
    <div class="bench">
      <BenchHeader />
      {/* the order on the page is the order in which the keys go through it */}
      <div class="bench-panes">{wide ? [job, result] : result}</div>
      {wide ? null : <JumpBar />}
    </div>
  );
}

/**
 * Result and form within a thumb’s reach, where they lie one below the other: the form stands behind the numbers to set. The
 * bar floats while no part of the form is seen, so that it never lies over a field.
 */
function JumpBar(): VNode {
  const [floats, setFloats] = useState(true);
  useEffect(() => {
    const form = document.getElementById('job');
    if (form === null) return;
    const watch = new IntersectionObserver(([entry]) => setFloats(entry?.isIntersecting !== true));
    watch.observe(form);
    return () => watch.disconnect();
  }, []);
  return (
    <nav class={floats ? 'jump-bar floats' : 'jump-bar'} aria-label="Parts of the bench">
      <a href="#result">Result</a>
      <a href="#job">Edit the job</a>
    </nav>
  );
}

import type { KnowledgeReport, NextTrialReport } from '@furrow/engine';
import { familyTable, nextTrialBlocks, outlierWords, scoreWords } from '@furrow/papers/blocks';
import { driftWords } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { BlockList, BlockPanel } from '../../ui/block/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { ScorePicture } from './score-picture.tsx';
import { SpreadPanel } from './spread-panel.tsx';
import type { Learned } from './use-report.ts';

/** What the trials teach: the doubt at its levels, the predictions and how they fared, drift, families. */
export function ReportPanels({ learned }: { readonly learned: Learned | undefined }): VNode {
  if (learned === undefined) return <p role="status">Learning from what was tried.</p>;
  if (learned.is === 'failure') {
    return (
      <p class="notice" role="alert">
        The trials could not be learned from: {learned.message}
      </p>
    );
  }
  if (learned.is === 'issues') {
    return (
      <p class="notice" role="alert">
        The trials have a mistake and are not learned from: {learned.issues[0]?.message}
      </p>
    );
  }
  const { report, next } = learned;
  return (
    <>
      <DriftPanel report={report} />
      <div class="knowledge-panes">
        <ScorePanel report={report} />
        <SpreadPanel report={report} />
      </div>
      {next === undefined ? null : <NextTrialPanel trial={next} />}
      <FamilyPanel report={report} />
    </>
  );
}

/** Predictions from which on it is said whether they hold. */
const JUDGED_LEAST = 4;

function DriftPanel({ report }: { readonly report: KnowledgeReport }): VNode {
  const units = useUnits();
  const drifting = report.drift.since !== null;
  const few = report.scores.predictions < JUDGED_LEAST;
  return (
    <section class={`panel drift${drifting ? ' drifting' : ''}`} aria-labelledby="drift-title">
      <h2 id="drift-title">
        {drifting ? (
          <>
            <span aria-hidden="true">△ </span>Predictions drift
          </>
        ) : few ? (
          'Too few cuts to judge predictions by'
        ) : (
          'Predictions hold'
        )}
      </h2>
      <p>
        {few && !drifting
          ? `The first few cuts teach most; from ${JUDGED_LEAST} on it is told here whether they drift away from their predictions.`
          : driftWords(report, units)}
      </p>
      {outlierWords(report).map((words) => (
        <p key={words} class="aside">
          {words}
        </p>
      ))}
    </section>
  );
}

function ScorePanel({ report }: { readonly report: KnowledgeReport }): VNode {
  const { predictions, entries } = report.scores;
  return (
    <section class="panel" aria-labelledby="scores-title">
      <header class="panel-head">
        <h2 id="scores-title">Predicted before the cut, then measured</h2>
        <p class="caption">
          each from the entries before it alone; the band holds 9 in 10 where predictions are honest
        </p>
      </header>
      {predictions === 0 ? (
        <p class="empty">Nothing was measured yet.</p>
      ) : (
        <>
          <ScorePicture entries={entries} />
          <p>{scoreWords(report)}</p>
        </>
      )}
    </section>
  );
}

function NextTrialPanel({ trial }: { readonly trial: NextTrialReport }): VNode {
  const units = useUnits();
  return (
    <section class="panel next-trial" aria-labelledby="next-trial-title">
      <header class="panel-head">
        <h2 id="next-trial-title">Next trial</h2>
        <p class="caption">what teaches most per minute for the job that is open</p>
      </header>
      <BlockList blocks={nextTrialBlocks(trial, units)} />
    </section>
  );
}

function FamilyPanel({ report }: { readonly report: KnowledgeReport }): VNode | null {
  const units = useUnits();
  if (report.families.length === 0) return null;
  return (
    <BlockPanel
      id="families"
      table={familyTable(report, units)}
      note="what is learned of one kind is lent to its neighbours: same shop first, then metal, electrode, position, torch"
    />
  );
}

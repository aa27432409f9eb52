import type { SurveySeam } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { ReadingsStatus } from '../../job/readings/index.ts';
import { isOutdated, useBenchState } from '../../job/state/index.ts';
import { EntryPanel } from './entry-panel.tsx';
import { FilePanel } from './file-panel.tsx';
import { FloorPanel } from './floor-panel.tsx';
import { GaugedPanel } from './gauged-panel.tsx';
import { useGroove } from './groove-context.ts';
import type { ShownSurvey } from './groove-state.ts';
import { HandOverPanel } from './hand-over-panel.tsx';
import { HistoryPanel } from './history-panel.tsx';
import { MendPanel } from './mend-panel.tsx';
import { NextPanel } from './next-panel.tsx';
import { PredictionPanel } from './prediction-panel.tsx';
import { SeamPanel } from './seam-panel.tsx';
import { SectionPanel } from './section-panel.tsx';
import { StretchPanel } from './stretch-panel.tsx';
import { TeachPanel } from './teach-panel.tsx';
import { VerdictPanel } from './verdict-panel.tsx';

/** The groove: the verdict in words first, what is entered beside it, then seam, stretches, what to do, sections, files. */
export function GrooveView(): VNode {
  const shown = useGroove((state) => state.shown);
  const current = useBenchState((state) => state.planned) === shown?.planned;
  const outdated = useBenchState(isOutdated) || !current;
  // the place that is to be measured next goes into the form at a touch
  const [wanted, setWanted] = useState<{ readonly at_mm: number; readonly wish: number }>();
  const measure = (at_mm: number): void => setWanted({ at_mm, wish: (wanted?.wish ?? 0) + 1 });
  const seam = shown?.report.seam ?? undefined;
  return (
    <>
      <ReadingsStatus />
      <div class={`groove-top${outdated ? ' outdated' : ''}`}>
        <div class="groove-say">
          <VerdictPanel />
          {seam === undefined ? null : <NextPanel seam={seam} onMeasure={measure} />}
        </div>
        <EntryPanel wanted={wanted} />
      </div>
      {shown === undefined || seam === undefined ? null : <Seam shown={shown} seam={seam} />}
      <GaugedPanel />
      <PredictionPanel seam={seam} />
      <FilePanel />
      {shown === undefined ? null : <FloorPanel reading={shown.report.reading} />}
      {shown === undefined ? null : <SectionPanel shown={shown} />}
      {shown === undefined ? null : (
        <div class="groove-pair">
          <HandOverPanel report={shown.report} />
          {seam === undefined ? null : <TeachPanel seam={seam} />}
        </div>
      )}
    </>
  );
}

function Seam({ shown, seam }: { readonly shown: ShownSurvey; readonly seam: SurveySeam }): VNode {
  return (
    <>
      <SeamPanel seam={seam} />
      <StretchPanel seam={seam} />
      <MendPanel seam={seam} />
      <HistoryPanel seam={seam} gauge={shown.report.inputs} />
    </>
  );
}

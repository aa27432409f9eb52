import { readFileSync } from 'node:fs';
import {
  answerCost,
  answerHazard,
  answerHeat,
  answerJob,
  answerKnowledge,
  answerRun,
  answerSurvey,
  type RunReport,
  readJob,
  readKit,
  readTrials,
  roundOf,
  type SurveyReport,
  sentencesWritten,
  type UnitSystem,
} from '@furrow/engine';
import {
  makePaper,
  PAPER_KINDS,
  renderCostText,
  renderHazardText,
  renderHeatText,
  renderKnowledgeText,
  renderRoundText,
  renderRunText,
  renderSupplyText,
  renderSurveyText,
  renderText,
} from '@furrow/papers';
import type { VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { Headline } from './job/result/headline.tsx';
import { ResultDetails } from './job/result/index.ts';
import { type Bench, BenchContext } from './job/state/index.ts';
import { CheckList } from './pages/commission/check-list.tsx';
import { ConnectionList } from './pages/commission/connection-list.tsx';
import type { Rig } from './pages/commission/rig.ts';
import { RigContext } from './pages/commission/rig-context.ts';
import { NOTHING_ENTERED } from './pages/commission/rig-record.ts';
import { CostPanels } from './pages/cost/cost-view.tsx';
import { HistoryPanel } from './pages/groove/history-panel.tsx';
import { NextPanel } from './pages/groove/next-panel.tsx';
import { StretchPanel } from './pages/groove/stretch-panel.tsx';
import { HazardPanels } from './pages/hazards/hazards-view.tsx';
import { HeatPanels } from './pages/heat/heat-view.tsx';
import { ReportPanels } from './pages/knowledge/report-panels.tsx';
import { EventTable } from './pages/run/event-table.tsx';
import { RunFigures } from './pages/run/run-figures.tsx';
import { StretchTable } from './pages/run/stretch-table.tsx';
import { SupplyPanels } from './pages/supply/supply-view.tsx';
import { createStore } from './ui/store/index.ts';
import { SettingsContext } from './ui/theme/index.ts';

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, EXAMPLES), 'utf8');

function good<Value>(read: { readonly ok: true; readonly value: Value } | { readonly ok: false }): Value {
  if (!read.ok) throw new Error('an example is not in order');
  return read.value;
}

const kit = good(readKit(textOf('yard-kit.yaml')));
const known = answerKnowledge(good(readTrials(textOf('trials/demo-yard.yaml'))));

/** A demo job with all that is answered about it. */
function worked(name: string) {
  const read = good(readJob(textOf(`${name}.yaml`)));
  const answer = answerJob({ job: read, kit, version: 'x' });
  const steps = answerHeat(read, answer, { quality: 'quick' });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const { report: heat } = step.value!;
  return {
    read,
    answer,
    heat,
    run: reviewed(),
    survey: gauged({ read, answer, knowledge: undefined }),
    hazard: answerHazard(read, answer, kit),
    cost: answerCost(read, answer, { heat }),
  };
}

/** A log in which the arc was out for a second, reviewed. */
function reviewed(): RunReport {
  const rows = Array.from({ length: 260 }, (_, n) => {
    const t = n / 10;
    const burns = t >= 2 && t < 24 && !(t >= 10 && t < 11);
    return `${t};${burns ? 42 + Math.sin(n) : 75};${burns ? 800 : 0};${burns || t < 24 ? 900 : 0}`;
  });
  const review = answerRun({ version: 'x' });
  const head = 'time [s];voltage [V];current [A];travel [mm/min]';
  review.push(new TextEncoder().encode(`${[head, ...rows].join('\n')}\n`));
  const { report } = good(review.end('00'));
  const [event] = report.events;
  const stretch = {
    ...{ kind: 'shallow', from_mm: 90, to_mm: 210, pass: 1, says: 'The depth falls short there.' },
    recut: {
      ...{
        from_mm: 90,
        to_mm: 210,
        current_A: 450,
        arc_voltage_V: 40,
        travel_mm_per_min: 612.4,
        dwell_s: 1.25,
        passes: 1,
        passes_before_gauge: 1,
        gauge: null,
      },
      depth_mm: { p05: 1, p50: 2, p95: 3 },
      ...{ ramp_mm: 10, chances: { reached: 0.859, not_too_deep: 0.7, ligament_kept: 1 } },
    },
  };
  const cause = { cause: 'stub', title: 'the electrode was used up', probability: 0.42, remedy: 'Look.' };
  return {
    ...report,
    events: [{ ...event!, causes: [cause], next_check: null }, ...report.events.slice(1)],
    stretches: [stretch as RunReport['stretches'][number]],
  };
}

/** What a few readings by hand say of a seam. */
function gauged(job: NonNullable<Parameters<typeof answerSurvey>[0]['job']>): SurveyReport {
  const { length } = job.read.job.seam;
  const depth = job.read.job.groove.depth.wanted;
  const rows = [1.1, 1.02, 1.15, 0.7, 1.05, 1.1].map(
    (share, index) => `${((index + 0.5) / 6) * length};${1000 * share * depth}`,
  );
  const bytes = new TextEncoder().encode(['station (m);depth (mm)', ...rows].join('\n'));
  return good(answerSurvey({ files: [{ name: 'gauge.csv', bytes }], job, version: 'x' }));
}

type Worked = ReturnType<typeof worked>;

/**
 * Panels that a page alone has: what one more trial is worth, the set-ups not taken, and how each lead warms up. The
 * sensitivities of a margin and the reasons of a check stand on pages alone as well.
 */
const ON_PAGES_ALONE = /^<section class="panel (?:doubt|comparison|lead-panel)/u;

/** What a part of a page shows to a reader of these units, without its drawings. */
function shown(part: VNode, { read, answer }: Worked, units: UnitSystem): string {
  const planned = { read, answer, edit: 0 };
  const store = createStore({ planned, read, issues: [], edits: 0, edit: 0, history: [] });
  const html = renderToString(
    <SettingsContext.Provider value={createStore({ units, theme: 'system' as 'system' | 'light' | 'dark' })}>
      <BenchContext.Provider value={{ store } as unknown as Bench}>{part}</BenchContext.Provider>
    </SettingsContext.Provider>,
  );
  const panels = html.split(/(?=<section class="panel )/u).filter((panel) => !ON_PAGES_ALONE.test(panel));
  return plain(
    panels
      .join('')
      .replaceAll(/<p>1 % more.*?<\/p>|<p class="aside check-why">.*?<\/p>/gsu, ' ')
      .replaceAll(/<svg.*?<\/svg>/gsu, ' ')
      .replaceAll(/<\/?(?:b|strong|span|em)\b[^>]*>/gu, '')
      .replaceAll(/<[^>]*>/gu, ' ')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&'),
  );
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll(/[\s─]+/gu, ' ');

/** Everything that terminal and papers say of a job. */
function told({ read, answer, heat, hazard, cost, run, survey }: Worked, units: UnitSystem): string {
  const { title } = read.job;
  const papers = PAPER_KINDS.map((kind) =>
    JSON.stringify(makePaper(kind, { read, answer, kit, heat }, { units, paper: 'a4' }).blocks),
  );
  return plain(
    [
      renderText(answer, read, units),
      renderSupplyText(answer, title, units),
      renderKnowledgeText(known, units),
      renderRoundText(roundOf(answer.supply!.checks, 'first'), title, units),
      renderRunText(run, title, units),
      renderSurveyText(survey, units),
      renderHazardText(hazard, title, units),
      renderHeatText(heat, title, units),
      renderCostText(cost, [], { read, inputs: answer.inputs }, units),
      ...papers,
    ].join('\n'),
  );
}

/** An amount as people read it: a number, or a fraction, with its unit. */
const AMOUNT =
  /(?<![\p{L}\d.,/])[−-]?\d+(?:\.\d+)?(?: \d+\/\d+|\/\d+)? ?(?:mm\/min|in\/min|m\/min|kJ\/mm|kJ\/in|L\/min|scfm|cfm|m3\/min|mg\/m3|g\/min|dBA|dB|mm²|in²|mm|in(?= |$|[.,;:)])|ft|psi|bar|kPa|°C|°F|kVA|kW|kA|mV|mT|HV|kg|lb|EUR|min|gal|V|A|W|L|m|s|h|%)(?![\p{L}\d²/])/gu;

const amountsOf = (text: string): readonly string[] => [...new Set(text.match(AMOUNT) ?? [])];

/** A rig at which nothing was read yet. */
const rig = {
  store: createStore({ saved: undefined, record: NOTHING_ENTERED, base: NOTHING_ENTERED }),
} as unknown as Rig;

interface Part {
  /** Amounts that the part shows at the least, of the job that has fewest [-]. */
  readonly least: number;
  readonly shows: (of: Worked, units: UnitSystem) => VNode;
}

const PARTS: Readonly<Record<string, Part>> = {
  bench: { least: 80, shows: () => <ResultDetails /> },
  'the headline': { least: 8, shows: ({ answer }) => <Headline plan={answer.plan!} /> },
  'what it knows': {
    least: 13,
    shows: () => <ReportPanels learned={{ is: 'report', report: known, next: undefined }} />,
  },
  supply: { least: 45, shows: ({ answer }) => <SupplyPanels supply={answer.supply!} bay="/bay" /> },
  hazards: { least: 65, shows: ({ hazard }) => <HazardPanels report={hazard} /> },
  heat: {
    least: 35,
    shows: ({ heat, read, answer }) => (
      <HeatPanels shown={{ heat: { report: heat }, planned: { read, answer } } as never} />
    ),
  },
  cost: {
    least: 75,
    shows: ({ cost }) =>
      cost.kind === 'no_plan' ? (
        <p />
      ) : (
        <CostPanels cost={cost} state={{ cost, changes: [], trying: false, failure: undefined }} />
      ),
  },
  commissioning: {
    least: 75,
    shows: ({ answer }, system) => (
      <RigContext.Provider value={rig}>
        <ConnectionList connections={answer.supply!.connections} system={system} />
        <CheckList checks={answer.supply!.checks} system={system} changedAt="" next={undefined} />
      </RigContext.Provider>
    ),
  },
  groove: {
    least: 10,
    shows: ({ survey }) => (
      <>
        <StretchPanel seam={survey.seam!} />
        <NextPanel seam={survey.seam!} onMeasure={() => undefined} />
        <HistoryPanel seam={survey.seam!} gauge={survey.inputs} />
      </>
    ),
  },
  run: {
    least: 16,
    shows: ({ run }, units) => {
      const report = sentencesWritten(run, units);
      const show = { place: () => undefined, time: () => undefined };
      return (
        <>
          <RunFigures report={report} />
          <StretchTable report={report} show={show} />
          <EventTable report={report} show={show} />
        </>
      );
    },
  },
};

describe.each(['penstock-seam', 'casting-wash', 'defect-pocket'])('%s', (name) => {
  const of = worked(name);

  describe.each(['metric', 'inch'] as const)('in %s units', (units) => {
    const elsewhere = new Set(amountsOf(told(of, units)));

    it.each(Object.entries(PARTS))('shows on the page of %s what terminal and papers tell', (_, part) => {
      const amounts = amountsOf(shown(part.shows(of, units), of, units));
      expect(amounts.filter((amount) => !elsewhere.has(amount))).toEqual([]);
      expect(amounts.length).toBeGreaterThanOrEqual(part.least);
    });
  });
});

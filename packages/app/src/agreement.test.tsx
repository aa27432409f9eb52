import { readFileSync } from 'node:fs';
import {
  answerCost,
  answerHazard,
  answerHeat,
  answerJob,
  answerKnowledge,
  readJob,
  readKit,
  readTrials,
  type UnitSystem,
} from '@furrow/engine';
import {
  makePaper,
  PAPER_KINDS,
  renderCostText,
  renderHazardText,
  renderHeatText,
  renderKnowledgeText,
  renderSupplyText,
  renderText,
} from '@furrow/papers';
import type { VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { Headline } from './job/result/headline.tsx';
import { ResultDetails } from './job/result/index.ts';
import { type Bench, BenchContext } from './job/state/index.ts';
import { CostPanels } from './pages/cost/cost-view.tsx';
import { HazardPanels } from './pages/hazards/hazards-view.tsx';
import { HeatPanels } from './pages/heat/heat-view.tsx';
import { ReportPanels } from './pages/knowledge/report-panels.tsx';
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
    hazard: answerHazard(read, answer, kit),
    cost: answerCost(read, answer, { heat }),
  };
}

type Worked = ReturnType<typeof worked>;

/**
 * Panels that a page alone has: what one more trial is worth, the set-ups not taken, and how each lead warms up. The
 * sensitivities of a margin stand on pages alone as well.
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
      .replaceAll(/<p>1 % more.*?<\/p>/gsu, ' ')
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
function told({ read, answer, heat, hazard, cost }: Worked, units: UnitSystem): string {
  const { title } = read.job;
  const papers = PAPER_KINDS.map((kind) =>
    JSON.stringify(makePaper(kind, { read, answer, kit, heat }, { units, paper: 'a4' }).blocks),
  );
  return plain(
    [
      renderText(answer, read, units),
      renderSupplyText(answer, title, units),
      renderKnowledgeText(known, units),
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

const PARTS = {
  bench: () => <ResultDetails />,
  'the headline': ({ answer }: Worked) => <Headline plan={answer.plan!} />,
  'what it knows': () => <ReportPanels learned={{ is: 'report', report: known, next: undefined }} />,
  supply: ({ answer }: Worked) => <SupplyPanels supply={answer.supply!} bay="/bay" />,
  hazards: ({ hazard }: Worked) => <HazardPanels report={hazard} />,
  heat: ({ heat, read, answer }: Worked) => (
    <HeatPanels shown={{ heat: { report: heat }, planned: { read, answer } } as never} />
  ),
  cost: ({ cost }: Worked) =>
    cost.kind === 'no_plan' ? (
      <p />
    ) : (
      <CostPanels cost={cost} state={{ cost, changes: [], trying: false, failure: undefined }} />
    ),
};

describe.each(['penstock-seam', 'casting-wash', 'defect-pocket'])('%s', (name) => {
  const of = worked(name);

  describe.each(['metric', 'inch'] as const)('in %s units', (units) => {
    const elsewhere = new Set(amountsOf(told(of, units)));

    it.each(Object.entries(PARTS))('shows on the page of %s what terminal and papers tell', (_, part) => {
      const amounts = amountsOf(shown(part(of), of, units));
      expect(amounts.length).toBeGreaterThan(6);
      expect(amounts.filter((amount) => !elsewhere.has(amount))).toEqual([]);
    });
  });
});

import { type Issue, readKit } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { kitFieldAt, pathOf, patternOf } from '../../sheet/document/index.ts';
import { AmountEntry, Choices, Question, QuestionForm, Wrong } from '../../sheet/questions/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import {
  AIRS,
  LEAD_UNIT,
  LONG_UNIT,
  type NewKit,
  NO_ANSWERS,
  newKitText,
  TORCHES,
  USUAL,
} from './new-kit-text.ts';

interface KitQuestionsProps {
  /** Takes the file of a kit that can be read. */
  readonly onText: (text: string) => void;
}

/** What has no usual value: where it goes in the file, by the answer. */
const ASKED = {
  noLoad: 'sources[0].no_load_voltage',
  ratedCurrent: 'sources[0].rating[0].current',
  leadSize: 'leads[0].size',
  electrodeLead: 'leads[0].length',
  workLead: 'leads[1].length',
  hoseSize: 'air.path[1].size',
  hoseLength: 'air.path[1].length',
} as const;
const ASKED_OF = {
  compressor: {
    delivery: 'air.compressor.delivery[0].flow',
    pressure: 'air.compressor.delivery[0].pressure',
  },
  shop: { outlet: 'air.compressor.delivery[0].pressure' },
  stated: { torchFlow: 'air.torch.flow', torchAt: 'air.torch.flow_at' },
} as const;

/** What was left open and has to be answered; what the file makes of it is read only after that. */
function stillOpen(kit: NewKit): readonly Issue[] {
  const asked = { ...ASKED, ...ASKED_OF[kit.air], ...(kit.torch === 'stated' ? ASKED_OF.stated : {}) };
  return Object.entries(asked)
    .filter(([key]) => kit[key as keyof NewKit].trim() === '')
    .map(([, path]) => ({ code: 'KIT_FIELD_MISSING', path, message: 'It is asked for.' }));
}

/** Six questions that a shop's kit begins with; everything else is filled in where it matters. */
export function KitQuestions({ onText }: KitQuestionsProps): VNode {
  const units = useUnits();
  const [kit, setKit] = useState<NewKit>(NO_ANSWERS);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const issuesOf = (from: NewKit): readonly Issue[] => {
    const open = stillOpen(from);
    const read = open.length > 0 ? undefined : readKit(newKitText(from, units));
    return read === undefined ? open : read.ok ? [] : read.issues;
  };
  const answer = (part: Partial<NewKit>): void => {
    const next = { ...kit, ...part };
    setKit(next);
    // once asked, what was mended goes at once
    if (issues.length > 0) setIssues(issuesOf(next));
  };
  const begin = (): void => {
    const found = issuesOf(kit);
    setIssues(found);
    if (found.length === 0) onText(newKitText(kit, units));
    else requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
  };
  const shown = new Set<string>();
  const amount = (
    key: Exclude<keyof NewKit, 'air' | 'torch'>,
    path: string,
    label: string,
    more: { readonly unit?: string; readonly usual?: string } = {},
  ): VNode => {
    shown.add(path);
    return (
      <AmountEntry
        label={label}
        field={kitFieldAt(patternOf(pathOf(path)))}
        value={kit[key]}
        issue={issues.find((issue) => issue.path === path)}
        onValue={(text) => answer({ [key]: text })}
        {...more}
      />
    );
  };
  const long = { unit: LONG_UNIT[units] };
  const source = (
    <Question title="Which power source?" note="As its plate says.">
      {amount('noLoad', 'sources[0].no_load_voltage', 'No-load voltage')}
      {amount('ratedCurrent', 'sources[0].rating[0].current', 'Rated current')}
      {amount('ratedVoltage', 'sources[0].rating[0].voltage', 'Load voltage', {
        usual: USUAL.ratedVoltage[units],
      })}
      {amount('duty', 'sources[0].rating[0].duty', 'Duty', { usual: USUAL.duty[units] })}
      {amount('sources', 'sources[0].count', 'How many side by side')}
    </Question>
  );
  const leads = (
    <Question
      title="Which leads?"
      note="Size as it is printed on the sheath, such as 95 mm2, 4/0 AWG or 250 kcmil."
    >
      {amount('leadSize', 'leads[0].size', 'Size of one conductor', { unit: LEAD_UNIT[units] })}
      {amount('leadParallels', 'leads[0].parallels', 'Side by side')}
      {amount('electrodeLead', 'leads[0].length', 'Source to torch', long)}
      {amount('workLead', 'leads[1].length', 'Work to source', long)}
    </Question>
  );
  const air = (
    <Question title="Where does the air come from?">
      <Choices name="air" value={kit.air} of={AIRS} onValue={(id) => answer({ air: id })} />
      {kit.air === 'compressor' ? (
        <>
          {amount('delivery', 'air.compressor.delivery[0].flow', 'Free air delivered')}
          {amount('pressure', 'air.compressor.delivery[0].pressure', 'Delivery pressure')}
          {amount('receiver', 'air.receiver.volume', 'Receiver', { usual: USUAL.receiver[units] })}
        </>
      ) : (
        amount('outlet', 'air.compressor.delivery[0].pressure', 'Pressure at the outlet')
      )}
    </Question>
  );
  const hose = (
    <Question title="Which hose leads to the torch?" note="The bore, as it is printed on the hose.">
      {amount('hoseSize', 'air.path[1].size', 'Bore', { unit: units === 'inch' ? 'in' : 'mm' })}
      {amount('hoseLength', 'air.path[1].length', 'Length', long)}
      {amount('regulator', 'air.path[0].set', 'Regulator set to', { usual: USUAL.regulator[units] })}
    </Question>
  );
  const torch = (
    <Question title="What does the torch take?">
      <Choices
        name="torch"
        value={kit.torch}
        of={TORCHES.map(({ id, title, flow, at }) => ({
          id,
          title,
          ...(flow === '' ? {} : { note: `usually ${flow} at ${at}` }),
        }))}
        onValue={(id) => answer({ torch: id })}
      />
      {kit.torch === 'stated' ? (
        <>
          {amount('torchFlow', 'air.torch.flow', 'Free air')}
          {amount('torchAt', 'air.torch.flow_at', 'Pressure before the torch')}
        </>
      ) : null}
    </Question>
  );
  const shop = (
    <Question title="What is the shop called, and how warm does it get?">
      <label class="question-amount">
        Name of the kit
        <input
          type="text"
          value={kit.title}
          placeholder={USUAL.title}
          onInput={(event) => answer({ title: event.currentTarget.value })}
        />
      </label>
      {amount('temperature', 'ambient.temperature', 'Warmest day', { usual: USUAL.temperature[units] })}
    </Question>
  );
  const elsewhere = issues.filter(({ path }) => !shown.has(path));
  return (
    <QuestionForm
      name="Kit in six questions"
      submit="Begin with this"
      aside="Everything else starts from defaults that are listed, and is filled in in the form. Where things stand is filled in there too, under Bay."
      onSubmit={begin}
    >
      {[source, leads, hose, air, torch, shop]}
      {elsewhere.map((issue) => (
        <Wrong key={`${issue.path} ${issue.message}`} issue={issue} />
      ))}
    </QuestionForm>
  );
}

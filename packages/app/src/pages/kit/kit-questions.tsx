import { formatAmount, type Issue, parseAmount, readKit, type UnitSystem } from '@furrow/engine';
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
  PLACES,
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
  bay: {
    bayLength: 'bay.outline[1].x',
    bayWidth: 'bay.outline[2].y',
    powerX: 'bay.power.x',
    powerY: 'bay.power.y',
    airX: 'bay.air.x',
    airY: 'bay.air.y',
    seamX: 'bay.seam[0].x',
    seamY: 'bay.seam[0].y',
    seamLength: 'bay.seam[1].x',
  },
} as const;

/** What was left open and has to be answered; what the file makes of it is read only after that. */
function stillOpen(kit: NewKit): readonly Issue[] {
  const asked = {
    ...ASKED,
    ...ASKED_OF[kit.air],
    ...(kit.torch === 'stated' ? ASKED_OF.stated : {}),
    ...(kit.place === 'bay' ? ASKED_OF.bay : {}),
  };
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
    key: Exclude<keyof NewKit, 'air' | 'torch' | 'place'>,
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
        of={TORCHES.map((torch) => torchChoice(torch, units))}
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
  const distance = (key: keyof (typeof ASKED_OF)['bay'], label: string): VNode =>
    amount(key, ASKED_OF.bay[key], label, long);
  const place = (
    <Question
      title="Where do things stand?"
      note={
        kit.place === 'bay'
          ? 'Distances from the front left corner; the seam runs along the length. A job that names this bay is drawn in it, any other on a plan of its own seam.'
          : 'A bay is not needed to plan; with one, the control station is placed and the fire zone drawn in it.'
      }
    >
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
      <Choices name="place" value={kit.place} of={PLACES} onValue={(id) => answer({ place: id })} />
      {kit.place === 'none' ? null : (
        <>
          <label class="question-amount">
            Name of the bay
            <input
              type="text"
              value={kit.bayName}
              placeholder={USUAL.bay}
              onInput={(event) => answer({ bayName: event.currentTarget.value })}
            />
          </label>
          {distance('bayLength', 'Length of the bay')}
          {distance('bayWidth', 'Width of the bay')}
          {distance('powerX', 'Power source, from the left')}
          {distance('powerY', 'Power source, from the front')}
          {distance('airX', 'Air drop, from the left')}
          {distance('airY', 'Air drop, from the front')}
          {distance('seamX', 'Start of the seam, from the left')}
          {distance('seamY', 'Start of the seam, from the front')}
          {distance('seamLength', 'Length of the seam')}
        </>
      )}
    </Question>
  );
  const elsewhere = issues.filter(({ path }) => !shown.has(path));
  return (
    <QuestionForm
      name="Kit in six questions"
      submit="Begin with this"
      aside="Everything else starts from usual values that are listed, and is filled in in the form; what few shops need is folded there."
      onSubmit={begin}
    >
      {[source, leads, hose, air, torch, place]}
      {elsewhere.map((issue) => (
        <Wrong key={`${issue.path} ${issue.message}`} issue={issue} />
      ))}
    </QuestionForm>
  );
}

/** A kind of torch to choose, told in the reader's units. */
function torchChoice(
  { id, electrodes, flow, at }: (typeof TORCHES)[number],
  units: UnitSystem,
): { readonly id: NewKit['torch']; readonly title: string; readonly note?: string } {
  if (id === 'stated') return { id, title: 'As its maker states' };
  const told = (text: string, kind: 'air_flow' | 'pressure' | 'length'): string => {
    const read = parseAmount(text, kind);
    return read.ok ? formatAmount(read.value, kind === 'length' ? 'bore' : kind, units) : text;
  };
  return {
    id,
    title:
      electrodes === undefined ? 'Larger, on a carriage' : `Electrodes up to ${told(electrodes, 'length')}`,
    note: `usually ${told(flow, 'air_flow')} at ${told(at, 'pressure')}`,
  };
}

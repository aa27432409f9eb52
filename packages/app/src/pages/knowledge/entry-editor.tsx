import { type Issue, METAL_FAMILIES, metalOf } from '@furrow/engine';
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { type EntryForm, type PassForm, readingsOf, TYPED_UNITS } from './entry-form.ts';

interface EntryEditorProps {
  readonly form: EntryForm;
  /** Name of the entry that is corrected; undefined for a new one. */
  readonly correcting: string | undefined;
  /** Name of the shop, asked for with its first entry. */
  readonly shop: string | undefined;
  readonly onShop: (shop: string) => void;
  readonly issues: readonly Issue[];
  readonly onChange: (form: EntryForm) => void;
  readonly onEnter: (reason: string) => void;
  readonly onCancel: () => void;
}

const POSITIONS = ['flat', 'horizontal', 'vertical_down', 'overhead'] as const;

/** The few fields of a trial or a finished job, large enough for a thumb. */
export function EntryEditor(props: EntryEditorProps): VNode {
  const { form, correcting, shop, issues, onChange, onEnter } = props;
  const [reason, setReason] = useState('');
  const typed = useRef<HTMLFormElement>(null);
  const units = useUnits();
  // all else is filled in from the plan
  useEffect(() => typed.current?.querySelector<HTMLInputElement>('.entry-readings')?.focus(), []);
  const set = (part: Partial<EntryForm>): void => onChange({ ...form, ...part });
  const setPass = (index: number, part: Partial<PassForm>): void =>
    set({ passes: form.passes.map((pass, k) => (k === index ? { ...pass, ...part } : pass)) });
  const last = form.passes.at(-1);
  const { length, speed } = TYPED_UNITS[units];
  return (
    <section class="panel entry-editor" aria-labelledby="entry-title">
      <header class="panel-head">
        <h2 id="entry-title">
          {correcting === undefined
            ? form.kind === 'trial'
              ? 'A trial'
              : 'A finished job'
            : `Correct ${correcting}`}
        </h2>
        <p class="caption">
          filled in from the plan that is open, where there is one; bare numbers are in the unit shown
        </p>
      </header>
      <form
        ref={typed}
        onSubmit={(event) => {
          event.preventDefault();
          onEnter(reason.trim());
        }}
      >
        {shop === undefined ? null : (
          <Entry label="Name of the shop" note="summaries that shops exchange are known by it">
            <input type="text" value={shop} onInput={(event) => props.onShop(event.currentTarget.value)} />
          </Entry>
        )}
        <div class="entry-row">
          <Entry label="Day">
            <input
              type="date"
              value={form.date}
              onInput={(event) => set({ date: event.currentTarget.value })}
            />
          </Entry>
          <Entry label="Metal">
            <select value={form.material} onChange={(event) => set({ material: event.currentTarget.value })}>
              {METAL_FAMILIES.map((family) => (
                <option key={family} value={family}>
                  {metalOf(family).title}
                </option>
              ))}
            </select>
          </Entry>
          <Entry label="Position">
            <select value={form.position} onChange={(event) => set({ position: event.currentTarget.value })}>
              {POSITIONS.map((position) => (
                <option key={position} value={position}>
                  {position.replace('_', ' ')}
                </option>
              ))}
            </select>
          </Entry>
          <Entry label="Electrode" unit={length}>
            <Typed value={form.diameter} onText={(diameter) => set({ diameter })} />
          </Entry>
          <Entry label="Jointed or plain">
            <select
              value={form.electrodeKind}
              onChange={(event) => set({ electrodeKind: event.currentTarget.value })}
            >
              <option value="jointed">jointed</option>
              <option value="plain">plain</option>
            </select>
          </Entry>
          <Entry label="Torch" note="where you tell torches apart">
            <Typed value={form.torch} onText={(torch) => set({ torch })} />
          </Entry>
          <Entry label="Spread of the gauge" unit={length} note="of one reading; 0.4 mm where left out">
            <Typed value={form.gaugeSd} onText={(gaugeSd) => set({ gaugeSd })} />
          </Entry>
        </div>
        {form.passes.map((pass, index) => (
          // passes have no better name than their place
          <fieldset key={index} class="entry-pass">
            <legend>{form.passes.length === 1 ? 'The cut' : `Pass ${index + 1}`}</legend>
            <div class="entry-row">
              <Entry label="Current" unit="A">
                <Typed value={pass.current} onText={(current) => setPass(index, { current })} />
              </Entry>
              <Entry label="Travel" unit={speed}>
                <Typed value={pass.travel} onText={(travel) => setPass(index, { travel })} />
              </Entry>
              <Entry label="Arc voltage" unit="V">
                <Typed value={pass.voltage} onText={(voltage) => setPass(index, { voltage })} />
              </Entry>
              <Entry label="Length" unit={length}>
                <Typed value={pass.length} onText={(text) => setPass(index, { length: text })} />
              </Entry>
            </div>
            <Entry label="Depth readings" unit={length} note={countOf(pass.readings, units)}>
              <input
                type="text"
                inputMode="text"
                class="entry-readings"
                placeholder={units === 'metric' ? '15.1  15.7  15.2' : '19/32  5/8  39/64'}
                value={pass.readings}
                onInput={(event) => setPass(index, { readings: event.currentTarget.value })}
              />
            </Entry>
          </fieldset>
        ))}
        {correcting === undefined ? null : (
          <Entry label="Why it is corrected">
            <Typed value={reason} onText={setReason} />
          </Entry>
        )}
        {issues.length === 0 ? null : (
          <div class="issue-summary" role="alert">
            <p>Nothing was saved:</p>
            <ul>
              {issues.slice(0, 5).map(({ message, path }) => (
                <li key={`${path} ${message}`}>{message}</li>
              ))}
            </ul>
          </div>
        )}
        <p class="modal-actions">
          <button
            type="submit"
            class="primary"
            aria-disabled={correcting !== undefined && reason.trim() === ''}
          >
            {correcting === undefined ? 'Enter' : 'Correct'}
          </button>
          <button type="button" onClick={() => set({ passes: [...form.passes, { ...last!, readings: '' }] })}>
            Another pass
          </button>
          <button type="button" onClick={props.onCancel}>
            Cancel
          </button>
        </p>
      </form>
    </section>
  );
}

/** How the readings typed are read. */
function countOf(text: string, units: 'metric' | 'inch'): string {
  const readings = readingsOf(text, units);
  if (readings.length === 0) return 'of this pass alone, one after the other; spread evenly over the length';
  return `${readings.length} read as ${readings.join(', ')}`;
}

interface EntryProps {
  readonly label: string;
  /** Unit of a bare number. */
  readonly unit?: string;
  readonly note?: string;
  readonly children: ComponentChildren;
}

function Entry({ label, unit, note, children }: EntryProps): VNode {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is what it is given
    <label class="entry-field">
      <span class="entry-label">
        {label}
        {unit === undefined ? null : <span class="aside">, {unit}</span>}
      </span>
      {children}
      {note === undefined ? null : <span class="aside entry-note">{note}</span>}
    </label>
  );
}

interface TypedProps {
  readonly value: string;
  readonly onText: (text: string) => void;
}

function Typed({ value, onText }: TypedProps): VNode {
  return <input type="text" value={value} onInput={(event) => onText(event.currentTarget.value)} />;
}

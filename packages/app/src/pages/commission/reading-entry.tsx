import type { VNode } from 'preact';
import { useId } from 'preact/hooks';
import { typedValue } from './judge-typed.ts';
import { type CheckRowFacts, useReading, useRig } from './rig-context.ts';

const ANSWERS = [
  { text: 'yes', words: 'As it should be' },
  { text: 'no', words: 'Wrong' },
  { text: '', words: 'Not checked' },
] as const;

interface ReadingEntryProps extends Pick<CheckRowFacts, 'check'> {
  readonly unread: boolean;
}

/** Where a reading is typed as people write it, or a check is said to be met or not. */
export function ReadingEntry({ check, unread }: ReadingEntryProps): VNode {
  const rig = useRig();
  const reading = useReading(check.id);
  // a round and the list for the printer may show one check twice
  const group = useId();
  const write = (text: string): void =>
    rig.read(check.id, { ...reading, text, value: typedValue(check, text) });
  if (check.kind === 'confirm') {
    return (
      <fieldset class="segments answer-segments">
        <legend class="unseen">{check.title}</legend>
        {ANSWERS.map(({ text, words }) => (
          <label key={text}>
            <input type="radio" name={group} checked={reading.text === text} onChange={() => write(text)} />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
    );
  }
  return (
    <input
      type="text"
      id={`reading-${check.id}`}
      class="reading-field"
      aria-label={`Reading, ${check.title}`}
      aria-describedby={`verdict-${check.id}`}
      aria-invalid={unread}
      autocomplete="off"
      spellcheck={false}
      value={reading.text}
      onInput={(event) => write(event.currentTarget.value)}
    />
  );
}

import type { Issue, JobField } from '@furrow/engine';
import type { VNode } from 'preact';
import { useId } from 'preact/hooks';
import { useUnits } from '../../ui/theme/index.ts';
import { acceptedText, besideField, boxUnit, isBareNumber } from '../form/index.ts';

interface AmountEntryProps {
  readonly label: string;
  /** The field of the file that the amount goes into. */
  readonly field: JobField | undefined;
  readonly value: string;
  readonly issue: Issue | undefined;
  readonly onValue: (text: string) => void;
  /** Unit of a number typed alone, where the file would ask for one. */
  readonly unit?: string;
  /** What stands in where it is left open. */
  readonly usual?: string;
}

/** One amount of a question, as people write it, with the unit that a number alone is meant in. */
export function AmountEntry({ label, field, value, issue, onValue, unit, usual }: AmountEntryProps): VNode {
  const id = useId();
  const units = useUnits();
  const shown = unit ?? (field === undefined ? undefined : boxUnit(field, units));
  const empty = value.trim() === '';
  return (
    <div class={`question-amount${issue === undefined ? '' : ' field-wrong'}`}>
      <label for={id}>{label}</label>
      <span class="entry-with-unit">
        <input
          id={id}
          type="text"
          inputMode="text"
          value={value}
          placeholder={usual === undefined ? undefined : `usually ${usual}`}
          spellcheck={false}
          aria-invalid={issue !== undefined}
          aria-describedby={`${id}-issue`}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
        {shown !== undefined && (empty ? usual === undefined : isBareNumber(value)) ? (
          <span class="entry-unit">{shown}</span>
        ) : null}
      </span>
      <p id={`${id}-issue`} class="field-issue" hidden={issue === undefined}>
        {issue === undefined
          ? ''
          : empty
            ? `${label} is asked for.`
            : `${besideField(issue)} ${acceptedText(issue)}`}
      </p>
    </div>
  );
}

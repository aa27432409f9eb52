import type { GivenReading, RunReport, Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { Field } from './field.tsx';

interface ReadingFormProps {
  readonly reading: Written<RunReport>['reading'];
  readonly onCorrect: (given: GivenReading) => void;
}

const DELIMITERS = { ',': 'comma', ';': 'semicolon', '\t': 'tab', ' ': 'space', '|': 'bar' } as const;

/** What of the reading can be corrected beside its columns: how cells are cut and numbers written. */
export function ReadingForm({ reading, onCorrect }: ReadingFormProps): VNode {
  const delimiters: readonly string[] = Object.keys(DELIMITERS);
  const own = delimiters.includes(reading.delimiter) ? delimiters : [reading.delimiter, ...delimiters];
  const lines = (name: string, value: number, given: (count: number) => GivenReading): VNode => (
    <Field label={name}>
      <input
        type="number"
        min={0}
        max={1000}
        value={value}
        onChange={(event) => {
          const count = event.currentTarget.valueAsNumber;
          if (Number.isInteger(count) && count >= 0) onCorrect(given(count));
        }}
      />
    </Field>
  );
  if (reading.format !== 'delimited') return <p class="caption">The file says itself how it is written.</p>;
  return (
    <div class="reading-form">
      <Field label="Delimiter">
        <select
          value={reading.delimiter}
          onChange={(event) => onCorrect({ delimiter: event.currentTarget.value })}
        >
          {own.map((each) => (
            <option key={each} value={each}>
              {DELIMITERS[each as keyof typeof DELIMITERS] ?? (each === '' ? 'none' : each)}
            </option>
          ))}
        </select>
      </Field>
      <Field label="Decimal sign">
        <select
          value={reading.decimal}
          onChange={(event) => {
            const decimal = event.currentTarget.value as '.' | ',';
            onCorrect({ decimal, ...(reading.thousands === decimal ? { thousands: '' } : {}) });
          }}
        >
          <option value=".">point</option>
          <option value=",">comma</option>
        </select>
      </Field>
      {lines('Lines before the header', reading.preamble_lines, (preambleLines) => ({
        preambleLines,
        headerLines: reading.header_lines,
      }))}
      {lines('Lines of the header', reading.header_lines, (headerLines) => ({
        preambleLines: reading.preamble_lines,
        headerLines,
      }))}
    </div>
  );
}

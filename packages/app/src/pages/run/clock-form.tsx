import { type GivenClock, type GivenReading, type RunReport, type Written, zoneOf } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Field } from './field.tsx';

interface ClockFormProps {
  readonly reading: Written<RunReport>['reading'];
  readonly onCorrect: (given: GivenReading) => void;
  /** Is told of another unit of the column of time. */
  readonly onUnit: (column: number, unit: string) => void;
}

const COUNTS = {
  elapsed: 'time since the logger was started',
  time_of_day: 'time of day, anew at midnight',
  rows: 'nothing: the rows are counted',
} as const;
const UNITS: readonly string[] = ['s', 'ms', 'us', 'ns', 'min', 'h', 'd'];
const ORDERS = { dmy: 'day first', mdy: 'month first', ymd: 'year first' } as const;

/** How the clock of a log is read: what it counts, its unit, its zone, and the time between rows where there is none. */
export function ClockForm({ reading, onCorrect, onUnit }: ClockFormProps): VNode | null {
  const [interval, setInterval] = useState('');
  const [zone, setZone] = useState<string>();
  const { clock } = reading;
  if (clock === null) return null;
  const correct = (given: GivenClock): void => onCorrect({ clock: given });
  const time = reading.columns.findIndex(({ quantity }) => quantity === 'time');
  const unit = reading.columns[time]?.unit ?? null;
  const fixed = clock.kind === 'date_and_time' || clock.kind === 'since_1970';
  const zoneWritten = zone ?? clock.zone ?? '';
  return (
    <div class="reading-form">
      <Field label="The clock counts">
        <select
          value={clock.counts ?? ''}
          onChange={(event) =>
            correct({ counts: (event.currentTarget.value || undefined) as GivenClock['counts'] })
          }
        >
          <option value="">as found: {FOUND[clock.kind]}</option>
          {Object.entries(COUNTS)
            .filter(([counts]) => counts === 'rows' || (!fixed && time >= 0))
            .map(([counts, words]) => (
              <option key={counts} value={counts}>
                {words}
              </option>
            ))}
        </select>
      </Field>
      {unit === null || clock.kind === 'rows' ? null : (
        <Field label="Unit of the clock">
          <select value={unit} onChange={(event) => onUnit(time, event.currentTarget.value)}>
            {[...new Set([unit, ...UNITS])].map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </Field>
      )}
      {clock.date_order === null ? null : (
        <Field label="Dates are written">
          <select
            value={clock.date_order}
            onChange={(event) => correct({ dateOrder: event.currentTarget.value as keyof typeof ORDERS })}
          >
            {Object.entries(ORDERS).map(([order, words]) => (
              <option key={order} value={order}>
                {words}
              </option>
            ))}
          </select>
        </Field>
      )}
      {clock.kind === 'date_and_time' && (clock.zone !== null || clock.begins?.endsWith('Z') === false) ? (
        <Field label="Zone of the clock">
          <input
            value={zoneWritten}
            placeholder="such as +01:00"
            aria-invalid={zoneWritten !== '' && zoneOf(zoneWritten) === undefined}
            onChange={(event) => {
              const written = event.currentTarget.value.trim();
              setZone(written);
              if (written === '' || zoneOf(written) !== undefined) correct({ zone: zoneOf(written) });
            }}
          />
        </Field>
      ) : null}
      {clock.kind === 'rows' || time < 0 ? (
        <Field label="Time between two rows [s]">
          <input
            inputMode="decimal"
            value={interval === '' ? (clock.interval_s ?? '') : interval}
            placeholder="such as 0.1"
            onChange={(event) => {
              const written = event.currentTarget.value;
              setInterval(written);
              const seconds = Number(written.replace(',', '.'));
              if (seconds > 0 && Number.isFinite(seconds)) correct({ interval: seconds });
            }}
          />
        </Field>
      ) : null}
    </div>
  );
}

const FOUND = {
  elapsed: 'time since the start',
  time_of_day: 'time of day',
  date_and_time: 'date and time',
  since_1970: 'time since 1970',
  rows: 'rows',
} as const;

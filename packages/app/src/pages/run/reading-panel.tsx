import type { RunReport, Written } from '@furrow/engine';
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { download } from '../../ui/hand-out/index.ts';
import { ColumnsTable, type ColumnUse, OpenFileButton } from '../../ui/take-in/index.ts';
import { ClockForm } from './clock-form.tsx';
import { ReadingForm } from './reading-form.tsx';
import { useKept, useKeptRuns, useRun, useRunDesk } from './run-context.ts';

interface ReadingPanelProps {
  readonly report: Written<RunReport>;
  /** Text of the description that has the next file of this logger read the same way. */
  readonly logger: string;
}

/** How the log was read, with the evidence for each choice; each column can be corrected. */
export function ReadingPanel({ report, logger }: ReadingPanelProps): VNode {
  const desk = useRunDesk();
  const log = useRun((state) => state.log);
  const kept = useKeptRuns();
  const loggers = useKept((state) => state.loggers);
  const [name, setName] = useState('');
  const { reading } = report;
  const open = reading.columns.some(({ sure }) => !sure) || reading.rows_rejected_count > 0;
  const correct = (at: number, by: { readonly quantity?: ColumnUse; readonly unit?: string }): void =>
    desk.correct({
      columns: reading.columns.map(({ name: header, quantity, unit }, index) => ({
        ...(header === '' ? { number: index + 1 } : { name: header }),
        ...(index === at
          ? { quantity: quantity ?? 'none', ...by }
          : { quantity: quantity ?? 'none', ...(unit === null ? {} : { unit }) }),
      })),
    });
  return (
    <details class="panel run-reading" open={open}>
      <summary>How the log was read: {reading.says}</summary>
      <p class="panel-lead">
        What was chosen, and why. Change what a column is where it was taken wrongly; the description keeps it
        for the next file of this logger.
      </p>
      <ColumnsTable
        name="Columns of the log, table"
        columns={reading.columns.map((column) =>
          column.sure ? column : { ...column, says: `${column.says} — please look at it` },
        )}
        onUse={(at, quantity) => correct(at, { quantity })}
      />
      <ReadingForm reading={reading} onCorrect={desk.correct} />
      <ClockForm reading={reading} onCorrect={desk.correct} onUnit={(at, unit) => correct(at, { unit })} />
      <ul class="run-choices">
        {reading.choices
          .filter(({ about }) => about !== 'column')
          .map(({ about, says }) => (
            <li key={about}>
              {about}: {says}
            </li>
          ))}
        {reading.rows_rejected.slice(0, 20).map(({ line, why }) => (
          <li key={line}>
            line {line} gave no row: {why}
          </li>
        ))}
      </ul>
      <div class="log-source-row">
        <button
          type="button"
          onClick={() => download(new Blob([logger], { type: 'application/yaml' }), 'logger.yaml')}
        >
          Save as logger description
        </button>
        <label class="live-field">
          <span>Name of the logger</span>
          <input value={name} onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <button type="button" onClick={() => void kept.keepLogger(named(logger, name))}>
          Keep for the next file of this logger
        </button>
        <OpenFileButton
          noun="logger description"
          onText={(text) => {
            if (log !== undefined) desk.open({ ...log, given: undefined, logger: text });
          }}
          onTrouble={() => undefined}
        />
      </div>
      {loggers.length === 0 ? null : (
        <ul class="run-choices" aria-label="Logger descriptions of the shop">
          {loggers.map(({ revision, name: called, columns }) => (
            <li key={revision}>
              {called === '' ? 'without a name' : called} ({columns.join(', ')}){' '}
              <button
                type="button"
                aria-label={`Erase the logger description ${called}`}
                onClick={() => void kept.eraseLogger(revision)}
              >
                Erase
              </button>
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}

/** A logger description under a name: a JSON text is YAML too, so that any name can be written. */
function named(description: string, name: string): string {
  const called = name.trim();
  return called === '' ? description : `${description.trimEnd()}\nname: ${JSON.stringify(called)}\n`;
}

import { exactAmount, type SurveyReport } from '@furrow/engine';
import type { VNode } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';
import { useBenchState } from '../../job/state/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { ChooseFile, ColumnsTable, type ColumnUse } from '../../ui/take-in/index.ts';
import { columnsText } from './columns-text.ts';
import { useGroove, useGrooveDesk } from './groove-context.ts';

/** Files that were measured: handed in as they are, how each was read, and what is to be read otherwise. */
export function FilePanel(): VNode {
  const desk = useGrooveDesk();
  const files = useReadings((state) => state.read?.readings.files) ?? [];
  const shown = useGroove((state) => state.shown);
  const missing = useGroove((state) => state.missing);
  const [over, setOver] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const take = async (chosen: readonly File[]): Promise<void> =>
    setTrouble(await desk.takeFiles(chosen, ownMemory().getItem('furrow.gauged_by') ?? ''));
  return (
    <section
      class={`panel groove-files-panel${over ? ' over' : ''}`}
      aria-labelledby="files-title"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        void take([...(event.dataTransfer?.files ?? [])]);
      }}
    >
      <header class="panel-head">
        <h2 id="files-title">Files measured</h2>
        <p class="caption">
          Drop gauge tables, scanned sections, a cloud (XYZ, PLY) or a height map (ASCII grid): each is kept
          as it is, by its hash.
        </p>
      </header>
      <p>
        <ChooseFile label="Add file" name="Measured file" onFile={(file) => take([file])} />
      </p>
      {trouble === undefined ? null : (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
      {files.map(({ name, sha256 }, index) => (
        <FileView
          key={sha256}
          name={name}
          index={index}
          count={files.length}
          reading={shown?.report.reading.find(({ file }) => file === name)}
          why={
            missing.includes(name)
              ? 'The file itself is not here; hand it in again.'
              : shown?.unread.find((each) => each.name === name)?.why
          }
        />
      ))}
    </section>
  );
}

interface FileViewProps {
  readonly name: string;
  /** Place in the list of the record [-]. */
  readonly index: number;
  readonly count: number;
  readonly reading: SurveyReport['reading'][number] | undefined;
  /** Why it cannot be read. */
  readonly why: string | undefined;
}

const UNITS = ['mm', 'cm', 'm', 'in', 'um'] as const;

/** One file: how it was read, with what can be said otherwise. */
function FileView({ name, index, count, reading, why }: FileViewProps): VNode {
  const desk = useReadingsDesk();
  const told = useReadings((state) => state.read?.readings.files?.[index]);
  const passes = useBenchState((state) => state.planned?.answer.plan?.passes) ?? [];
  const set = (field: string, value: string): void =>
    desk.change([
      value === ''
        ? { do: 'remove', path: ['files', index, field] }
        : {
            do: 'set',
            path: ['files', index, field],
            value: field === 'after_pass' ? Number(value) : value,
          },
    ]);
  const unsure = why !== undefined || (reading?.choices.some(({ sure }) => !sure) ?? false);
  // what was open to be looked at stays so once it is put right
  const doubted = useRef(false);
  if (unsure) doubted.current = true;
  const choice = (
    field: 'unit' | 'vertical',
    title: string,
    options: readonly string[],
    none: string,
  ): VNode => (
    <label>
      {title}{' '}
      <select
        aria-label={`${title} of ${name}`}
        value={told?.[field] ?? ''}
        onChange={(event) => set(field, event.currentTarget.value)}
      >
        <option value="">{none}</option>
        {options.map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <details class="groove-file" open={doubted.current}>
      <summary>
        {name}: {why ?? (reading === undefined ? 'being read' : kindWords(reading))}
      </summary>
      <div class="groove-file-says">
        {choice('unit', 'Unit where none is stated', UNITS, 'as found')}
        {choice('vertical', 'Second coordinate', ['height', 'range'], 'as found')}
        <label>
          Place of a single section{' '}
          <input
            type="text"
            aria-label={`Place of ${name}`}
            defaultValue={told?.station === undefined ? '' : exactAmount(told.station, 'length', 'metric')}
            onChange={(event) => set('station', event.currentTarget.value.trim())}
          />
        </label>
        {passes.length < 2 ? null : (
          <label>
            Measured after{' '}
            <select
              aria-label={`Pass after which ${name} was measured`}
              value={told?.after_pass === undefined ? '' : String(told.after_pass)}
              onChange={(event) => set('after_pass', event.currentTarget.value)}
            >
              <option value="">all passes</option>
              {passes.slice(0, -1).map(({ number }) => (
                <option key={number} value={String(number)}>
                  pass {number}
                </option>
              ))}
            </select>
          </label>
        )}
        <button
          type="button"
          class="quiet"
          onClick={() => desk.change([{ do: 'remove', path: count === 1 ? ['files'] : ['files', index] }])}
        >
          take {name} off the list
        </button>
      </div>
      {reading === undefined ? null : (
        <>
          <ul class="groove-choices">
            {reading.choices.map(({ about, says, sure }) => (
              <li key={`${about}${says}`}>
                {says}
                {sure ? '' : ' — please look at it'}
              </li>
            ))}
          </ul>
          {reading.table === null ? null : (
            <Columns
              name={name}
              table={reading.table}
              onColumns={(text) => set('description', text)}
              corrected={told?.description !== undefined}
            />
          )}
        </>
      )}
    </details>
  );
}

interface ColumnsProps {
  readonly name: string;
  readonly table: NonNullable<SurveyReport['reading'][number]['table']>;
  /** Is handed the description by which the file is read from now on; empty: as found. */
  readonly onColumns: (text: string) => void;
  readonly corrected: boolean;
}

/** What each column of a table was taken for; a column that was taken wrongly is corrected here. */
function Columns({ name, table, onColumns, corrected }: ColumnsProps): VNode {
  const correct = (at: number, quantity: ColumnUse): void =>
    onColumns(
      columnsText(
        table.columns.map((column, index) => ({
          name: column.name,
          quantity: index === at ? quantity : (column.quantity ?? 'none'),
          unit: column.unit,
        })),
      ),
    );
  return (
    <>
      <ColumnsTable name={`Columns of ${name}, table`} file={name} columns={table.columns} onUse={correct} />
      {corrected ? (
        <p>
          <button type="button" class="quiet" onClick={() => onColumns('')}>
            read {name} as found again
          </button>
        </p>
      ) : null}
    </>
  );
}

function kindWords({ kind, rows_read }: SurveyReport['reading'][number]): string {
  const rows = `${rows_read} ${kind === 'cloud' ? 'points' : 'rows'}`;
  return { sections: `scanned sections, ${rows}`, stations: `gauge table, ${rows}`, cloud: `cloud, ${rows}` }[
    kind
  ];
}

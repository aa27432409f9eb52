import { type DocumentPath, pathText } from '@furrow/engine';
import type { ComponentChildren, VNode } from 'preact';
import { useRef } from 'preact/hooks';
import { useSheet, useSheetState } from '../index.ts';
import { EntryList } from './entry-list.tsx';
import { fieldId } from './field-id.ts';
import { FieldRow } from './field-row.tsx';
import { type FormEntry, type FormGroup, fieldsIn } from './form-group.ts';
import { ListTable } from './list-table.tsx';
import { useGroupWrong } from './use-group-wrong.ts';

/** Groups that are folded at first: they are filled in once for a shop, or not at all. */
const FOLDED = new Set([
  'rates',
  'heat',
  'reweld',
  'after',
  'site',
  'plan',
  'locks',
  'plate.composition',
  'site.eyes',
  'site.fire',
  'site.fume',
  'site.leads',
  'site.room',
  'site.ventilation',
  'after.spread',
  'after.alternatives',
  'bay',
  'stock',
  'gauge_check',
  'recuts',
  'files',
  'run',
]);

interface GroupViewProps {
  readonly group: FormGroup;
  /** Where the group stands in the file; that of the group itself where no list is on the way. */
  readonly path?: DocumentPath;
  readonly inner?: boolean;
  /** Whether it stands open at first, whatever it is. */
  readonly unfolded?: boolean;
  /** Whether it is folded at first where it is long. */
  readonly brief?: boolean;
}

/** Fields from which on a group is long, those of the groups inside it included [-]. */
const LONG_FROM = 16;

function countFields({ entries }: FormGroup): number {
  return entries.reduce((sum, entry) => sum + ('field' in entry ? 1 : countFields(entry.group)), 0);
}

/** A group of the form that can be folded. */
export function GroupView({
  group,
  path = plainPath(group),
  inner = false,
  unfolded = false,
  brief = false,
}: GroupViewProps): VNode {
  const { noun } = useSheet();
  const folded = FOLDED.has(group.path) || (brief && countFields(group) >= LONG_FROM);
  const { wrong, open } = useGroupWrong(path, unfolded || !folded);
  const Heading = inner ? 'h4' : 'h3';
  return (
    <details class={`group${inner ? ' group-inner' : ''}`} open={open}>
      <summary id={path.length === 0 ? `field-${noun}` : fieldId(path)}>
        <Heading>{group.title}</Heading>
        {wrong ? <span class="group-wrong">needs attention</span> : null}
      </summary>
      <div class="group-fields">
        <GroupEntries group={group} path={path} />
      </div>
    </details>
  );
}

/** Fields of a kit that few shops fill in: they stand folded at the end of their group. */
const SELDOM = new Set([
  'polarity',
  'ambient.atmosphere',
  'sources.*.slope',
  'sources.*.points',
  'sources.*.current_most',
  'sources.*.efficiency',
  'sources.*.power_factor',
  'sources.*.mains_voltage',
  'sources.*.mains_phases',
  'leads.*.metal',
  'leads.*.source',
  'leads.*.laid',
  'leads.*.resistance_mohm_per_m',
  'leads.*.insulation_limit',
  'air.path.*.wall',
  'air.path.*.fittings',
  'air.path.*.conductance_dm3_per_s_bar',
  'air.path.*.critical_ratio',
  'air.path.*.valve',
  'air.path.*.droop_kPa_per_100_L_per_min',
  'air.torch.conductance_dm3_per_s_bar',
  'air.torch.critical_ratio',
  'air.torch.bore',
  'air.torch.holes',
  'air.torch.discharge_coefficient',
  'air.wanted',
  'stock.lead_joint',
  'stock.hose_joint',
  'bay.keep_out',
  'bay.lead_clearance',
  'bay.clearance',
  'bay.grid',
  'bay.covers',
]);

/** What a group holds, where it stands in the file. */
function GroupEntries({ group, path }: { readonly group: FormGroup; readonly path: DocumentPath }): VNode {
  const list = group.entries[0];
  // a list has one group for all of its entries
  if (list !== undefined && 'group' in list && list.group.path === `${group.path}.*`) {
    return <ListView entry={list.group} list={path} />;
  }
  const seldom = group.entries.filter((entry) => SELDOM.has(pathOf(entry)));
  const shown = (entries: readonly FormEntry[]): VNode[] =>
    entries.map((entry) => <EntryView key={pathOf(entry)} entry={entry} above={path} />);
  return (
    <>
      {shown(group.entries.filter((entry) => !seldom.includes(entry)))}
      {seldom.length === 0 ? null : (
        <Seldom paths={seldom.map((entry) => pathText([...path, lastOf(pathOf(entry))]))}>
          {shown(seldom)}
        </Seldom>
      )}
    </>
  );
}

interface SeldomProps {
  /** Where what it holds stands in the file. */
  readonly paths: readonly string[];
  readonly children: ComponentChildren;
}

/** What is filled in by few, folded; it opens where something in it is wrong. */
function Seldom({ paths, children }: SeldomProps): VNode {
  const wrong = useSheetState((state) =>
    state.issues.some((issue) => paths.some((path) => issue.path.startsWith(path))),
  );
  const opened = useRef(false);
  opened.current ||= wrong;
  return (
    <details class="group group-inner" open={opened.current}>
      <summary>
        <h4>Seldom needed</h4>
        {wrong ? <span class="group-wrong">needs attention</span> : null}
      </summary>
      <div class="group-fields">{children}</div>
    </details>
  );
}

function pathOf(entry: FormEntry): string {
  return 'field' in entry ? entry.field.path : entry.group.path;
}

function EntryView({ entry, above }: { readonly entry: FormEntry; readonly above: DocumentPath }): VNode {
  if ('field' in entry) {
    return <FieldRow field={entry.field} path={[...above, lastOf(entry.field.path)]} />;
  }
  const { group } = entry;
  const path = [...above, lastOf(group.path)];
  // the electrodes stand in the group of the kit without a fold of their own
  if (group.path === 'kit.electrodes') return <GroupEntries group={group} path={path} />;
  return <GroupView group={group} path={path} inner />;
}

function ListView({ entry, list }: { readonly entry: FormGroup; readonly list: DocumentPath }): VNode {
  const flat = entry.entries.every((one) => 'field' in one);
  return flat ? (
    <ListTable list={list} fields={fieldsIn(entry)} />
  ) : (
    <EntryList
      list={list}
      named={hasName(entry)}
      contents={(path) => <GroupEntries group={entry} path={path} />}
    />
  );
}

function plainPath(group: FormGroup): DocumentPath {
  return group.path === '' ? [] : group.path.split('.');
}

function lastOf(pattern: string): string {
  return pattern.split('.').at(-1) ?? '';
}

function hasName(entry: FormGroup): boolean {
  return fieldsIn(entry).some((field) => field.path === `${entry.path}.name`);
}

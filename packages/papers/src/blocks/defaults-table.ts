import type { AnswerInputs, DefaultUsed, DocumentField, UnitSystem } from '@furrow/engine';
import { defaultText, defaultTitle } from '../words/index.ts';
import type { TableBlock } from './paper-document.ts';

/** Parts of the job that time and money rest on. */
const COST_PARTS = /^(?:rates|after|reweld)\b/u;

/** Defaults that time and money of a job rest on. */
export function costDefaults({ defaults_used: used }: AnswerInputs): readonly DefaultUsed[] {
  return used.filter(({ path }) => COST_PARTS.test(path));
}

/** What stood in for what a file does not state, with why; none where everything is stated. */
export function defaultsTable(
  caption: string,
  defaults: readonly DefaultUsed[],
  fields: readonly DocumentField[],
  units: UnitSystem,
): TableBlock[] {
  if (defaults.length === 0) return [];
  return [
    {
      kind: 'table',
      caption,
      small: true,
      columns: [
        { title: 'Field', align: 'start', weight: 1.4 },
        { title: 'Taken as', align: 'start', weight: 0.8, strong: true },
        { title: 'Why', align: 'start', weight: 2 },
      ],
      rows: defaults.map((each) => [
        titleOf(each.path, fields, units),
        defaultText(each, fields, units),
        each.why,
      ]),
    },
  ];
}

/** The field's title with the part of the file it stands in; an entry of a list by its place. */
function titleOf(path: string, fields: readonly DocumentField[], units: UnitSystem): string {
  const title = defaultTitle(path, fields, units);
  const parts = path
    .split('.')
    .slice(0, -1)
    .map((part) => part.replaceAll('_', ' ').replace(/\[(\d+)\]$/u, (_, index) => ` ${Number(index) + 1}`));
  const part = parts.join(', ');
  return part === '' ? title : `${part}: ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
}

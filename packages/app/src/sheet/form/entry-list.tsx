import type { DocumentPath } from '@furrow/engine';
import type { VNode } from 'preact';
import { entriesAt, patternOf, writtenAt } from '../document/index.ts';
import { useSheet, useSheetState } from '../index.ts';
import { fieldId } from './field-id.ts';
import { freshEntry, type ListWords, listWords } from './list-words.ts';
import { useGroupWrong } from './use-group-wrong.ts';

interface EntryListProps {
  /** Where the list stands in the file. */
  readonly list: DocumentPath;
  /** Whether its entries have names. */
  readonly named: boolean;
  /** What stands inside an entry. */
  readonly contents: (path: DocumentPath) => VNode;
}

/** A list of entries that hold lists themselves: each entry is a group that can be folded. */
export function EntryList({ list, named, contents }: EntryListProps): VNode {
  const sheet = useSheet();
  const count = useSheetState((state) => entriesAt(state.readable, list));
  const broken = useSheetState((state) => state.file.broken);
  const words = listWords(patternOf(list));
  const add = (): void => {
    sheet.change([{ do: 'append', path: list, entry: freshEntry(words, count, named) }]);
    requestAnimationFrame(() => document.getElementById(fieldId([...list, count]))?.focus());
  };
  return (
    <div class="entry-list" id={fieldId(list)} tabIndex={-1}>
      {Array.from({ length: count }, (_, index) => (
        <Entry
          // entries have no other name that is sure to be their own
          key={index}
          path={[...list, index]}
          words={words}
          onRemove={() => sheet.change([{ do: 'remove', path: count === 1 ? list : [...list, index] }])}
        >
          {contents([...list, index])}
        </Entry>
      ))}
      <button type="button" disabled={broken} onClick={add}>
        Add {words.one}
      </button>
    </div>
  );
}

interface EntryProps {
  readonly path: DocumentPath;
  readonly children: VNode;
  readonly words: ListWords;
  readonly onRemove: () => void;
}

function Entry({ path, words, onRemove, children }: EntryProps): VNode {
  const name = useSheetState((state) => writtenAt(state.readable, [...path, 'name']));
  const broken = useSheetState((state) => state.file.broken);
  const { wrong, open } = useGroupWrong(path);
  const number = Number(path.at(-1)) + 1;
  return (
    <details class="group group-inner" open={open}>
      <summary id={fieldId(path)}>
        <h4>
          {words.one.charAt(0).toUpperCase()}
          {words.one.slice(1)} {number}
          {name === undefined ? '' : `: ${name}`}
        </h4>
        {wrong ? <span class="group-wrong">needs attention</span> : null}
      </summary>
      <div class="group-fields">
        {children}
        <p>
          <button
            type="button"
            class="quiet"
            aria-label={`Remove ${words.one} ${number}`}
            disabled={broken}
            onClick={onRemove}
          >
            remove this {words.one}
          </button>
        </p>
      </div>
    </details>
  );
}

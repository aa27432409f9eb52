import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { SHEET_TITLES, useSheet, useSheetState } from '../index.ts';
import { formGroups } from './form-group.ts';
import { GroupView } from './group-view.tsx';
import { IssueSummary } from './issue-summary.tsx';
import { TextView } from './text-view.tsx';

const VIEWS = ['form', 'text'] as const;
type View = (typeof VIEWS)[number];

interface FormViewProps {
  /** Whether there is little room for it: long groups are folded then. */
  readonly brief?: boolean;
  /** Groups that stand before all others, by their path. */
  readonly first?: readonly string[];
}

/** A job or the kit to fill in: as a form, or as the text of its file. */
export function FormView({ brief = false, first }: FormViewProps): VNode {
  const { noun } = useSheet();
  const title = SHEET_TITLES[noun];
  const fields = useSheetState((state) => state.file.fields);
  const groups = useMemo(() => formGroups(fields.all, title, first), [fields, title, first]);
  const [view, setView] = useState<View>('form');
  const [wanted, setWanted] = useState<{ line: number; wish: number }>();
  const broken = useSheetState((state) => state.file.broken);
  const showLine = (line: number): void => {
    setView('text');
    setWanted({ line, wish: (wanted?.wish ?? 0) + 1 });
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight') return;
    event.preventDefault();
    const next = view === 'form' ? 'text' : 'form';
    setView(next);
    document.getElementById(`tab-${next}`)?.focus();
  };
  return (
    <div class="job-views">
      <div class="tabs" role="tablist" aria-label={`${title} as`} onKeyDown={onKey}>
        {VIEWS.map((name) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`tab-${name}`}
            aria-selected={view === name}
            aria-controls="job-view"
            tabIndex={view === name ? 0 : -1}
            onClick={() => setView(name)}
          >
            {name === 'form' ? 'Form' : 'Text'}
          </button>
        ))}
      </div>
      <div class={`job-view job-view-${view}`} id="job-view" role="tabpanel" aria-labelledby={`tab-${view}`}>
        <IssueSummary onLine={showLine} onForm={() => setView('form')} />
        {view === 'text' ? (
          <TextView wanted={wanted} />
        ) : (
          <form
            class="job-form"
            aria-label={title}
            autocomplete="off"
            onSubmit={(event) => event.preventDefault()}
          >
            {broken ? (
              <p class="notice">
                The text has a mistake in its layout. Put it right in the text view; until then the form only
                shows.
              </p>
            ) : null}
            <p class="form-key">
              Write amounts as you would say them: 3/8 in, 0.375", 9,5 mm, 28 ipm.{' '}
              <span class="required">*</span> must be filled in.
            </p>
            {groups.map((group) => (
              <GroupView key={group.path} group={group} brief={brief} />
            ))}
          </form>
        )}
      </div>
    </div>
  );
}

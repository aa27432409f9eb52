import type { VNode } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { SHEET_TITLES, useSheet, useSheetState } from '../index.ts';

interface TextViewProps {
  /** Line to show and select, and a number that changes with each wish to see it. */
  readonly wanted: { readonly line: number; readonly wish: number } | undefined;
}

/** The file as text with line numbers; what is typed here changes the form and the other way round. */
export function TextView({ wanted }: TextViewProps): VNode {
  const sheet = useSheet();
  const { noun } = sheet;
  const text = useSheetState((state) => state.file.text);
  const issues = useSheetState((state) => state.issues);
  const area = useRef<HTMLTextAreaElement>(null);
  const gutter = useRef<HTMLDivElement>(null);
  const lines = text.split('\n');
  const wrong = new Set(issues.map(({ position }) => position?.line));
  const wish = wanted?.wish;
  useLayoutEffect(() => {
    const { current } = area;
    if (current === null || wanted === undefined || wish === undefined) return;
    const all = current.value.split('\n');
    const start = all.slice(0, wanted.line - 1).reduce((sum, line) => sum + line.length + 1, 0);
    current.focus();
    current.setSelectionRange(start, start + (all[wanted.line - 1]?.length ?? 0));
    current.scrollTop = Math.max(0, (wanted.line - 5) * (current.scrollHeight / Math.max(1, all.length)));
  }, [wish]);
  return (
    <div class="text-view">
      <div class="text-gutter" ref={gutter} aria-hidden="true">
        {lines.map((_line, index) => (
          // a line has no other name than its number
          <span key={index} class={wrong.has(index + 1) ? 'line-wrong' : ''}>
            {index + 1}
          </span>
        ))}
      </div>
      <textarea
        ref={area}
        aria-label={`${SHEET_TITLES[noun]} file as text`}
        aria-invalid={issues.length > 0}
        value={text}
        wrap="off"
        spellcheck={false}
        autocomplete="off"
        autocapitalize="off"
        onInput={(event) => sheet.setText(event.currentTarget.value)}
        onScroll={(event) => {
          if (gutter.current !== null) gutter.current.scrollTop = event.currentTarget.scrollTop;
        }}
      />
    </div>
  );
}

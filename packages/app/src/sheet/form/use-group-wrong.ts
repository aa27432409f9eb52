import { type DocumentPath, pathText } from '@furrow/engine';
import { useRef } from 'preact/hooks';
import { useSheetState } from '../index.ts';

/** Whether something inside a group is wrong, and whether it stands open: once opened for a mistake it stays so. */
export function useGroupWrong(
  path: DocumentPath,
  openAtFirst = false,
): { readonly wrong: boolean; readonly open: boolean } {
  const at = pathText(path);
  const wrong = useSheetState(
    (state) =>
      at !== '' &&
      state.issues.some(
        (issue) => issue.path === at || issue.path.startsWith(`${at}.`) || issue.path.startsWith(`${at}[`),
      ),
  );
  // it must not fold under the hands of who mends it
  const opened = useRef(false);
  opened.current ||= wrong;
  return { wrong, open: openAtFirst || opened.current };
}

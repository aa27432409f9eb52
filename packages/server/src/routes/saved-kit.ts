import type { SavedKit } from '@furrow/contract';
import type { StoredKit } from '@furrow/store';
import { kitIssuesOf } from '../reading/kit-reading.ts';

const NONE = {
  title: '',
  revision: null,
  revision_number: 0,
  saved_at: null,
  text: '',
  valid: false,
} as const;

/** The stored kit as it is handed out: with what this version of the program makes of its text. */
export function savedKit(kit: StoredKit | undefined): SavedKit {
  if (kit === undefined) return { ...NONE, issues: [] };
  const issues = kitIssuesOf(kit.text);
  return { ...kit, valid: issues.length === 0, issues };
}

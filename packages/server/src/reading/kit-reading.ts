import { type Issue, KIT_TEXT_MOST, type ReadKit, readKit } from '@furrow/engine';
import type { KitContent } from '@furrow/store';
import { boundedIssues } from '../guard/bounded.ts';
import { Refused } from '../guard/refused.ts';
import { draftTitle, shownTitle } from './document-title.ts';
import { toMend } from './to-mend.ts';

const UNTITLED = 'Untitled kit';

/** What is to be saved of a text: a draft with mistakes is kept like a kit that can be planned with. */
export function kitContentOf(text: string): KitContent {
  if (text.length > KIT_TEXT_MOST) {
    throw new Refused(
      'KIT_TOO_LARGE',
      `The text has ${text.length} characters; a kit has at most ${KIT_TEXT_MOST}. Nothing was saved.`,
    );
  }
  const outcome = readKit(text);
  return outcome.ok
    ? { text, title: shownTitle(outcome.value.kit.title, UNTITLED), revision: outcome.value.revision }
    : { text, title: draftTitle(text, UNTITLED), revision: null };
}

/** The kit of a text that has to be a whole one; `whose` names it in the refusal. */
export function readWholeKit(text: string, whose = 'The kit'): ReadKit {
  const outcome = readKit(text);
  if (outcome.ok) return outcome.value;
  const { issues } = outcome;
  throw new Refused('KIT_NOT_READABLE', `${whose} cannot be planned with yet: ${toMend(issues)}.`, {
    issues,
  });
}

/** What is wrong with a text; empty for a whole kit. */
export function kitIssuesOf(text: string): Issue[] {
  const outcome = readKit(text);
  return outcome.ok ? [] : boundedIssues(outcome.issues);
}

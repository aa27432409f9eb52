import type { Issue } from '@furrow/engine';
import { JOB_TEXT_MOST } from '@furrow/engine';
import type { KitContent } from '@furrow/store';
import { draftTitle } from './document-title.ts';
import { Refused } from './refused.ts';

const UNTITLED = 'Untitled kit';

/** What is to be saved of a text: a draft with mistakes is kept like a kit that can be planned with. */
export function kitContentOf(text: string): KitContent {
  if (text.length > JOB_TEXT_MOST) {
    throw new Refused(
      'KIT_TOO_LARGE',
      `The text has ${text.length} characters; a kit has at most ${JOB_TEXT_MOST}. Nothing was saved.`,
    );
  }
  return { text, title: draftTitle(text, UNTITLED), revision: null };
}

/** What is wrong with a text; empty for a whole kit. */
export function kitIssuesOf(_text: string): Issue[] {
  return [];
}

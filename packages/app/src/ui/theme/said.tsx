import { type Sentence, sentenceText } from '@furrow/engine';
import type { VNode } from 'preact';
import { useUnits } from './settings-context.ts';

/** A sentence with its amounts in the reader's units. */
export function Said({ sentence }: { readonly sentence: Sentence }): VNode {
  return <>{sentenceText(sentence, useUnits())}</>;
}

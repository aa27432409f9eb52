import type { VNode } from 'preact';

/** Stands where a drawing will be once the job can be read. */
export function NotReadYet(): VNode {
  return <p class="drawing-empty">Drawn as soon as the job can be read.</p>;
}

import type { Source } from '@furrow/engine';
import type { VNode } from 'preact';

const PROVENANCE: Readonly<Record<Source['provenance'], string>> = {
  confirmed: 'confirmed in a public text',
  memory: 'from memory',
  derived: 'derived',
  'common practice': 'common practice, no source',
  'job file': 'stated in the job or kit file',
};

/** Where a number or a rule comes from, and how far that can be trusted. */
export function SourceText({ source }: { readonly source: Source }): VNode {
  const { text, provenance } = source;
  // some texts say it themselves
  const told = text.includes(provenance);
  return (
    <>
      {text} {told ? null : <span class="provenance">({PROVENANCE[provenance]})</span>}
    </>
  );
}

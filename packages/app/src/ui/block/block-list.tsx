import type { PaperBlock } from '@furrow/papers/blocks';
import { boundUnits } from '@furrow/papers/words';
import type { VNode } from 'preact';
import { BlockTable } from './block-table.tsx';

/** Blocks below each other, as a paper has them; what only paper can carry is left out. */
export function BlockList({ blocks }: { readonly blocks: readonly PaperBlock[] }): VNode {
  return (
    <>
      {blocks.map((block, index) => (
        <Block key={index} block={block} />
      ))}
    </>
  );
}

function Block({ block }: { readonly block: PaperBlock }): VNode | null {
  switch (block.kind) {
    case 'heading':
      return <h3>{block.text}</h3>;
    case 'paragraph':
      return <p class={block.tone === 'small' ? 'caption' : undefined}>{boundUnits(block.text)}</p>;
    case 'list':
      if (block.items.length === 0) return null;
      return (
        <ul class={block.tone === 'caution' ? 'caution-items' : 'plain-list'}>
          {block.items.map((item, index) => (
            <li key={index}>{boundUnits(item)}</li>
          ))}
        </ul>
      );
    case 'table':
      return (
        <>
          <p class="table-caption">{block.caption}</p>
          <BlockTable table={block} />
        </>
      );
    case 'columns':
      return <BlockList blocks={block.columns.flatMap(({ blocks }) => blocks)} />;
    case 'figures':
    case 'fields':
    case 'drawing':
    case 'signatures':
      return null;
  }
}

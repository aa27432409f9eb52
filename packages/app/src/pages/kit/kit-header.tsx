import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { KitDesk } from '../../job/kit/index.ts';
import { kitSaveWords } from '../../job/kit/index.ts';
import { writtenAt } from '../../sheet/document/index.ts';
import { UndoButton } from '../../sheet/index.ts';
import { download } from '../../ui/hand-out/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { useSelected } from '../../ui/store/index.ts';
import { OpenFileButton } from '../../ui/take-in/index.ts';

/** Title and state of the kit, and what can be done with it as a whole. */
export function KitHeader({ desk }: { readonly desk: KitDesk }): VNode {
  const title = useSelected(desk.store, (state) => writtenAt(state.readable, ['title']) ?? 'Kit');
  const words = useSelected(desk.store, kitSaveWords);
  const failed = useSelected(desk.store, (state) => state.save.is === 'failed');
  const [trouble, setTrouble] = useState<string>();
  const hand = (): void =>
    download(new Blob([desk.store.get().file.text], { type: 'application/yaml' }), 'kit.yaml');
  return (
    <SiteHeader
      title={title}
      state={
        <p class={`save-state${failed ? ' save-failed' : ''}`} role="status" aria-label="Save state">
          {words}
        </p>
      }
    >
      <fieldset class="actions">
        <legend class="unseen">The kit as a whole</legend>
        <button type="button" class="primary" onClick={() => void desk.save()}>
          Save
        </button>
        <UndoButton />
        <OpenFileButton noun="kit" onText={desk.setText} onTrouble={setTrouble} />
        <button type="button" onClick={hand}>
          Export
        </button>
      </fieldset>
      {trouble === undefined ? null : (
        <p class="notice notice-wide" role="alert">
          {trouble}
        </p>
      )}
    </SiteHeader>
  );
}

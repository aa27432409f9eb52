import type { VNode } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { writtenAt } from '../document/index.ts';
import { SiteHeader } from '../site/index.ts';
import { useSelected } from '../store/index.ts';
import type { KitDesk } from './kit-desk.ts';
import { kitSaveWords } from './kit-words.ts';

/** Largest file that is looked at; a kit is far smaller. */
const FILE_BYTES_MOST = 1_000_000;

/** Title and state of the kit, and what can be done with it as a whole. */
export function KitHeader({ desk }: { readonly desk: KitDesk }): VNode {
  const title = useSelected(desk.store, (state) => writtenAt(state.readable, ['title']) ?? 'Kit');
  const words = useSelected(desk.store, kitSaveWords);
  const failed = useSelected(desk.store, (state) => state.save.is === 'failed');
  const file = useRef<HTMLInputElement>(null);
  const [trouble, setTrouble] = useState<string>();
  const open = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    if (chosen.size > FILE_BYTES_MOST) setTrouble(`${chosen.name} is too large to be a kit file.`);
    else desk.setText(await chosen.text());
  };
  const hand = (): void => {
    const address = URL.createObjectURL(new Blob([desk.store.get().file.text], { type: 'application/yaml' }));
    const link = document.createElement('a');
    link.href = address;
    link.download = 'kit.yaml';
    link.click();
    // the browser has taken the address over once the click has been worked off
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  };
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
        <button type="button" onClick={() => file.current?.click()}>
          Open file
        </button>
        <input
          ref={file}
          type="file"
          class="unseen"
          tabIndex={-1}
          aria-label="Kit file to open"
          accept=".yaml,.yml,.json,.txt"
          onChange={(event) => {
            const input = event.currentTarget;
            void open(input.files?.[0]).then(() => {
              input.value = '';
            });
          }}
        />
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

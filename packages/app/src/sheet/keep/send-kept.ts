import type { Store } from '../../ui/store/index.ts';
import type { KeepState } from './keep-state.ts';

/** What became of something that was kept in the browser: sent, still to be sent, or to be decided on by a person. */
export type KeptEnd = 'sent' | 'waits' | 'asks';

/** Content that is opened with what an earlier visit left unsaved. */
export interface OpenedKept<Content, Saved> {
  readonly store: Pick<Store<KeepState<Content, Saved>>, 'get'>;
  readonly saveNow: () => Promise<void>;
  readonly close: () => void;
}

/** Sends what an earlier visit left unsaved, where its page is not open, by the same way as the page would. */
export async function sendKept<Content, Saved>(opened: OpenedKept<Content, Saved>): Promise<KeptEnd> {
  await opened.saveNow();
  const { save, newer } = opened.store.get();
  opened.close();
  if (newer !== undefined) return 'asks';
  if (save.is === 'failed') return save.unreached === true ? 'waits' : 'asks';
  return 'sent';
}

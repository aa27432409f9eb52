import { failed, fetchMeasured, type Reply, sendOriginal } from '../../api/index.ts';

/** Files as they were handed in, each known by its SHA-256. */
export interface Originals {
  /** Keeps a file; its hash, or why it could not be kept. */
  readonly put: (file: Blob) => Promise<Reply<string>>;
  /** Takes in a file that the server has, so that it need not be fetched again. */
  readonly hold: (sha256: string, file: Blob) => void;
  /** The file of a hash; undefined where it is not to be had. */
  readonly get: (sha256: string) => Promise<Blob | undefined>;
}

/** Files handed in since the app was opened, and whether the server has them. */
const HANDED_IN = new Map<string, { readonly file: Blob; sent: boolean }>();

/** The originals of a job: with the server once the job is saved, in the memory of the page until then. */
export function originalsOf(id: string | undefined): Originals {
  const send = async (sha256: string, file: Blob): Promise<Reply<string>> => {
    const reply = await sendOriginal(file);
    if (!reply.ok) return failed(reply.failure.message);
    HANDED_IN.set(sha256, { file, sent: true });
    return { ok: true, value: sha256 };
  };
  return {
    async put(file) {
      const sha256 = await hashOf(file);
      HANDED_IN.set(sha256, { file, sent: false });
      return id === undefined ? { ok: true, value: sha256 } : send(sha256, file);
    },
    hold: (sha256, file) => void HANDED_IN.set(sha256, { file, sent: true }),
    async get(sha256) {
      const held = HANDED_IN.get(sha256);
      if (held === undefined) {
        const reply = id === undefined ? undefined : await fetchMeasured(id, sha256);
        return reply?.ok === true ? reply.value : undefined;
      }
      // what was handed in before the job was saved is kept with it now
      if (id !== undefined && !held.sent) await send(sha256, held.file);
      return held.file;
    },
  };
}

async function hashOf(file: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** A file whose SHA-256 is worked out piece by piece. */
export interface FileHash {
  readonly add: (bytes: Uint8Array) => void;
  /** The hash in hex; nothing may be added afterwards. */
  readonly hex: () => string;
}

/**
 * Works out the SHA-256 of a file while it is read.
 *
 * @returns the hash under way [record]
 * @source FIPS 180-4, by the library noble-hashes
 * @example
 * fileHash().hex().slice(0, 8) // => "e3b0c442"
 */
export function fileHash(): FileHash {
  const hash = sha256.create();
  return {
    add: (bytes) => {
      hash.update(bytes);
    },
    hex: () => bytesToHex(hash.digest()),
  };
}

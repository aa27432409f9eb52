import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 over the content with its keys in order, so that layout and comments do not count. */
export function revisionOf(content: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(JSON.stringify(sortedKeys(content)))));
}

function sortedKeys(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortedKeys);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, item]) => [key, sortedKeys(item)]));
}

/**
 * Follows the packets that a broker sends: the length of each stands at its head, so that a huge one is known before it
 * is gathered in memory.
 */
export class PacketBound {
  readonly #most: number;
  #left = 0;
  /** Length read so far; undefined before the first byte of a packet. */
  #head: { value: number; shift: number } | undefined;

  /** @param most - longest packet that is wanted [bytes] */
  constructor(most: number) {
    this.#most = most;
  }

  /** Whether all packets that begin in the next piece are short enough. */
  holds(piece: Uint8Array): boolean {
    for (let at = 0; at < piece.length; ) {
      if (this.#left > 0) {
        const passed = Math.min(this.#left, piece.length - at);
        this.#left -= passed;
        at += passed;
      } else if (this.#head === undefined) {
        this.#head = { value: 0, shift: 0 };
        at += 1;
      } else {
        const byte = piece[at]!;
        const { value, shift } = this.#head;
        const length = value + (byte & 127) * 2 ** shift;
        at += 1;
        if (shift > 21 || length > this.#most) return false;
        if (byte >= 128) this.#head = { value: length, shift: shift + 7 };
        else {
          this.#head = undefined;
          this.#left = length;
        }
      }
    }
    return true;
  }
}

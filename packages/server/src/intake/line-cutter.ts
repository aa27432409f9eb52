const LF = 10;

/** Cuts a stream of bytes into lines, in memory bounded by the longest line that is wanted. */
export class LineCutter {
  readonly #most: number;
  #held: Uint8Array[] = [];
  #length = 0;

  /** @param most - longest line that is kept whole [bytes]; of a longer one the first bytes are given, one more than that */
  constructor(most: number) {
    this.#most = most;
  }

  /** Lines that these bytes complete, without their ends. */
  push(bytes: Uint8Array): readonly Uint8Array[] {
    const lines: Uint8Array[] = [];
    let from = 0;
    for (let at = bytes.indexOf(LF); at >= 0; at = bytes.indexOf(LF, from)) {
      this.#hold(bytes.subarray(from, at));
      lines.push(this.#whole());
      from = at + 1;
    }
    this.#hold(bytes.subarray(from));
    return lines;
  }

  /** The last line, where no line end stands behind it. */
  end(): readonly Uint8Array[] {
    return this.#length > 0 ? [this.#whole()] : [];
  }

  #hold(piece: Uint8Array): void {
    const kept = piece.subarray(0, Math.max(0, this.#most + 1 - this.#length));
    if (kept.length === 0) return;
    this.#held.push(new Uint8Array(kept));
    this.#length += kept.length;
  }

  #whole(): Uint8Array {
    const whole = Buffer.concat(this.#held);
    this.#held = [];
    this.#length = 0;
    return whole;
  }
}

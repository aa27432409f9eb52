/** What may be opened, by the least that it may come to. */
interface Entry<Bound> {
  readonly bound: Bound;
  readonly open: () => void;
}

/**
 * Opens what may come to least first, and leaves shut what is beyond what was found on the way: a search whose bounds are
 * true finds what it would find by opening everything.
 */
export class LeastFirst<Bound> {
  /** A heap: no entry comes to less than the one at half its place. */
  #heap: Entry<Bound>[] = [];
  #worth: (bound: Bound) => number = () => 0;

  /** Adds what may be opened; what is opened may add more. */
  add(bound: Bound, open: () => void): void {
    const heap = this.#heap;
    const entry = { bound, open };
    const value = this.#worth(bound);
    let place = heap.length;
    heap.push(entry);
    while (place > 0) {
      const above = (place - 1) >> 1;
      if (this.#worth(heap[above]!.bound) <= value) break;
      heap[place] = heap[above]!;
      place = above;
    }
    heap[place] = entry;
  }

  /** Opens, the least by this value first, until the least is beyond. */
  run(worth: (bound: Bound) => number, isBeyond: (value: number) => boolean): void {
    const all = this.#heap;
    this.#heap = [];
    this.#worth = worth;
    for (const { bound, open } of all) this.add(bound, open);
    for (;;) {
      const least = this.#heap[0];
      if (least === undefined || isBeyond(worth(least.bound))) return;
      this.#dropFirst();
      least.open();
    }
  }

  #dropFirst(): void {
    const heap = this.#heap;
    const last = heap.pop()!;
    if (heap.length === 0) return;
    const value = this.#worth(last.bound);
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= heap.length) break;
      if (below + 1 < heap.length && this.#worth(heap[below + 1]!.bound) < this.#worth(heap[below]!.bound))
        below += 1;
      if (this.#worth(heap[below]!.bound) >= value) break;
      heap[place] = heap[below]!;
      place = below;
    }
    heap[place] = last;
  }
}

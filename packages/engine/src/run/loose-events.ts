import { type EventFacts, eventWords } from './event-words.ts';
import { EVENTS_MOST } from './open-pass.ts';
import type { EventKind, RunEvent } from './outcome.ts';

/** Events that lie in no pass, the first of each kind. */
export class LooseEvents {
  readonly list: RunEvent[] = [];
  private readonly counts: Partial<Record<EventKind, number>> = {};

  add(
    kind: EventKind,
    [start, end]: readonly [number, number],
    [firstRow, lastRow]: readonly [number, number],
    facts: Omit<EventFacts, 'duration'>,
  ): void {
    const count = (this.counts[kind] ?? 0) + 1;
    this.counts[kind] = count;
    if (count > EVENTS_MOST) return;
    this.list.push({
      kind,
      pass: undefined,
      start,
      end,
      from: undefined,
      to: undefined,
      placeSd: undefined,
      firstRow,
      lastRow,
      rose: undefined,
      says: eventWords(kind, { duration: end - start, ...facts }),
    });
  }

  /** Events of a kind that were not kept. */
  notListed(): [EventKind, number][] {
    const counts = Object.entries(this.counts) as [EventKind, number][];
    return counts.filter(([, n]) => n > EVENTS_MOST).map(([kind, n]) => [kind, n - EVENTS_MOST]);
  }
}

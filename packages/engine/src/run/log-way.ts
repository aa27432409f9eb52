import { GAP_LEAST, POSITION_JUMP, POSITION_ROWS } from './event-thresholds.ts';
import type { Channel } from './log-batch.ts';
import type { WaySource } from './outcome.ts';
import type { Row } from './row.ts';

/** A reading of the position that no carriage makes, for a few rows. */
export interface PositionSpike {
  /** When it began [s], and its first row [-]. */
  readonly time: number;
  readonly row: number;
  /** How far it was off [m]. */
  readonly by: number;
}

/** The way that the carriage has gone, from whatever the log has: position, travel, or arc time at set travel. */
export class LogWay {
  source: WaySource = 'none';
  /** Way of the log so far, from any zero [m]. */
  s = 0;
  /** Way that the wheel counted so far [m]. */
  wheel = 0;
  /** The last spike of the position that came to its end; taken by the caller. */
  spike: PositionSpike | undefined;
  private speed = Number.NaN;
  private position = Number.NaN;
  private jumpRows = 0;
  private jump: PositionSpike = { time: 0, row: 0, by: 0 };

  /** Chooses by what the log has; a plan knows the set travel. */
  choose(channels: { readonly [C in Channel]?: unknown }, hasPlan: boolean): void {
    if (channels.position_m !== undefined) this.source = 'position';
    else if (channels.travel_m_per_s !== undefined) this.source = 'travel';
    else this.source = hasPlan ? 'arc_time' : 'none';
  }

  /**
   * Moves on by what the row tells.
   *
   * @param now - the row
   * @param elapsed - time since the row before [s]
   * @param burns - whether the arc burned up to it
   * @param usual - usual travel of the log [m/s]
   * @param setWay - way that the carriage makes meanwhile at set travel, where it runs [m]
   */
  moveOn(now: Row, elapsed: number, burns: boolean, usual: number | undefined, setWay: number): void {
    const { speed } = now;
    const known = !Number.isNaN(speed);
    const knownBefore = !Number.isNaN(this.speed);
    if (known && knownBefore) this.wheel += 0.5 * (speed + this.speed) * elapsed;
    if (this.source === 'position') this.moveTo(now, elapsed, burns, usual ?? 0.05);
    else if (this.source === 'travel') {
      const here = known ? speed : this.speed;
      const before = knownBefore ? this.speed : here;
      if (!Number.isNaN(here)) this.s += 0.5 * (here + before) * elapsed;
    } else if (this.source === 'arc_time') this.s += setWay;
    if (known) this.speed = speed;
  }

  private moveTo(now: Row, elapsed: number, burns: boolean, usual: number): void {
    const { position } = now;
    if (Number.isNaN(position)) return;
    if (!Number.isNaN(this.position)) {
      const off = position - this.position;
      const most = Math.max(POSITION_JUMP, 8 * usual * elapsed);
      if (Math.abs(off) > most && burns && elapsed < GAP_LEAST * 5) {
        this.jumpRows += 1;
        if (this.jumpRows === 1) this.jump = { time: now.time, row: now.row, by: off };
        if (this.jumpRows < POSITION_ROWS) return;
      }
      if (this.jumpRows > 0 && this.jumpRows < POSITION_ROWS) this.spike = this.jump;
      this.jumpRows = 0;
    }
    this.position = position;
    this.s = position;
  }
}

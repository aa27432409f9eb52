import {
  ARC,
  type ArcStateCode,
  nextState,
  OFF,
  OPEN,
  SHORT,
  type StateLevels,
  stateLevels,
} from './arc-state.ts';
import { ArcWatch } from './arc-watch.ts';
import { type DriftWindow, leftSince } from './drift.ts';
import { ElectrodeInUse } from './electrode-in-use.ts';
import {
  GAP_INTERVALS,
  GAP_LEAST,
  LOSS_WINDOW,
  PASS_LEAST,
  PAUSE_BLIND,
  PAUSE_MOST,
  SETTLING,
  SHORT_INTERVALS,
  SHORT_SHARE,
} from './event-thresholds.ts';
import { type EventFacts, eventWords } from './event-words.ts';
import type { RunExpectation } from './expectation.ts';
import type { Mark } from './lasting.ts';
import type { LogLevels } from './levels.ts';
import type { Channel, ClockNote, LogBatch } from './log-batch.ts';
import { LogWay } from './log-way.ts';
import { LooseEvents } from './loose-events.ts';
import { isElectrodeChange, OpenPass } from './open-pass.ts';
import type { Deviation, EventKind, PassRun, RunEvent, RunOutcome } from './outcome.ts';
import { Anchor } from './place.ts';
import { noRow, type Row } from './row.ts';
import type { CoursePiece } from './seam-course.ts';
import { currentWindow, settlePass, voltageWindow } from './settle-pass.ts';
import type { Blocks } from './steady-blocks.ts';
import { SteadyReading } from './steady-reading.ts';
import { totalsOf } from './totals.ts';

/** Follows the arc through the rows of a log: its states, its passes, and what happens in them. */
export class RunMachine {
  private readonly expected: RunExpectation | undefined;
  private readonly lossWindow: number;
  private readonly anchor: Anchor;
  private readonly levels: LogLevels;
  private readonly states: StateLevels;
  private readonly volts: SteadyReading;
  private readonly amps: SteadyReading;
  private readonly watched: ArcWatch;
  private readonly way = new LogWay();
  private readonly electrode = new ElectrodeInUse();
  private readonly loose = new LooseEvents();
  private readonly notes = new Map<number, ClockNote>();
  /** Silence between two rows from which the logger said nothing [s]. */
  private readonly silence: number;
  private channels: Channel[] = [];
  private rows = 0;
  private now = noRow();
  private before = noRow();
  /** Filled anew for each row. */
  private readonly piece: CoursePiece = { from: 0.5, to: 0.5, energy: 0.5, time: 0.5, seen: true };
  private state: ArcStateCode = OFF;
  // the break of the arc under way
  private runStart: Mark = { time: 0, row: 0, way: 0 };
  private outTime = 0;
  private shortTime = 0;
  private lastShort: { from: Mark; to: Mark } | undefined;
  private pass: OpenPass | undefined;
  private readonly passes: PassRun[] = [];
  private readonly events: RunEvent[] = [];
  private readonly notListed: Partial<Record<EventKind, number>> = {};
  private strikes = 0;

  constructor(expected: RunExpectation | undefined, levels: LogLevels) {
    this.expected = expected;
    this.lossWindow = expected?.lossWindow ?? LOSS_WINDOW;
    this.anchor = new Anchor(expected);
    this.levels = levels;
    this.states = stateLevels(levels);
    this.silence = Math.max(GAP_LEAST, GAP_INTERVALS * levels.interval);
    const { voltage, noLoad, current } = levels;
    const voltsMost = Math.max(1.15 * (noLoad ?? 0), 2.2 * (voltage ?? 45));
    this.volts = new SteadyReading(voltage, voltsMost, levels.voltageRepeats);
    this.amps = new SteadyReading(current, 2.5 * (current ?? 2000), levels.currentRepeats);
    const { volts, amps } = this;
    this.watched = new ArcWatch(levels, this.lossWindow, { volts, amps }, (kind, stretch, facts) => {
      this.pass?.add(kind, stretch, stretch.to.row - 1, facts);
    });
  }

  /** Takes what was mended in the clock, ahead of the rows that it is about. */
  clockNote(note: ClockNote): void {
    this.notes.set(note.row, note);
  }

  /** Takes rows in the order of the file. */
  advance({ time_s, row, channels }: LogBatch): void {
    const count = time_s.length;
    if (this.rows === 0 && count > 0) {
      this.channels = Object.keys(channels) as Channel[];
      this.way.choose(channels, this.expected !== undefined);
    }
    const none = Number.NaN;
    const { voltage_V, current_A, travel_m_per_s, position_m } = channels;
    const { feed_m_per_s, air_pressure_Pa, air_flow_m3_per_s } = channels;
    for (let n = 0; n < count; n += 1) {
      const { now } = this;
      now.time = time_s[n]!;
      now.row = row[n]!;
      now.volts = voltage_V === undefined ? none : voltage_V[n]!;
      now.amps = current_A === undefined ? none : current_A[n]!;
      now.speed = travel_m_per_s === undefined ? none : travel_m_per_s[n]!;
      now.position = position_m === undefined ? none : position_m[n]!;
      now.feed = feed_m_per_s === undefined ? none : feed_m_per_s[n]!;
      now.air = air_pressure_Pa === undefined ? none : air_pressure_Pa[n]!;
      now.flow = air_flow_m3_per_s === undefined ? none : air_flow_m3_per_s[n]!;
      this.step(now);
    }
  }

  /** What is otherwise than it ought to be at the last row, as far as the pass under way tells; places are provisional. */
  underWay(): readonly Deviation[] {
    const { pass, expected } = this;
    if (pass === undefined) return [];
    const { time } = this.before;
    const deviation = (kind: EventKind, from: Mark, facts: Omit<EventFacts, 'duration'>): Deviation => ({
      kind,
      since: from.time,
      duration: time - from.time,
      at: Number.isNaN(from.way) ? undefined : (this.anchor.expectedPass()?.from ?? 0) + Math.abs(from.way),
      says: eventWords(kind, { duration: time - from.time, ...facts }),
    });
    if (this.state !== ARC) {
      // a pass that is as long as planned is over, and its arc is out for good
      const length = this.anchor.expectedLength();
      const isOver = length !== undefined && Math.abs(pass.lost.way) >= 0.95 * length;
      const out = time - pass.lost.time >= this.lossWindow - 0.25 * this.levels.interval;
      return out && !isOver ? [deviation('arc_out', pass.lost, {})] : [];
    }
    const found = this.watched.underWay(time).map(({ kind, from, facts }) => deviation(kind, from, facts));
    if (expected === undefined) return found;
    const drift = (kind: EventKind, { value, time: begins, row, way }: Blocks, window: DriftWindow): void => {
      const from = leftSince(value, window);
      if (from === undefined) return;
      const mark = { time: begins[from]!, row: row[from]!, way: way[from]! };
      found.push(deviation(kind, mark, { value: value.at(-1)!, against: window.target }));
    };
    drift('voltage_drift', pass.volts.blocksSoFar(), voltageWindow(expected));
    drift('current_drift', pass.amps.blocksSoFar(), currentWindow(expected));
    return found;
  }

  /** The last events that are over at the last row, oldest first; those of the pass under way with provisional places. */
  overSoFar(most: number): readonly Deviation[] {
    const from = this.anchor.expectedPass()?.from ?? 0;
    const settled = this.events.slice(-most).map(
      ({ kind, start, end, from: at, says }): Deviation => ({
        kind,
        since: start,
        duration: end - start,
        at,
        says,
      }),
    );
    const open = (this.pass?.events ?? []).slice(-most).map(
      ({ kind, from: { time, way }, facts }): Deviation => ({
        kind,
        since: time,
        duration: facts.duration,
        at: Number.isNaN(way) ? undefined : from + Math.abs(way),
        says: eventWords(kind, facts),
      }),
    );
    return [...settled, ...open].sort((a, b) => a.since - b.since).slice(-most);
  }

  /** Ends the log and gives what it tells. */
  end(): RunOutcome {
    const { time, row } = this.before;
    if (this.pass !== undefined) {
      if (this.state === ARC) this.endBurn(this.mark(time + this.levels.interval, row + 1));
      this.closePass(this.pass);
    }
    const events = [...this.events, ...this.loose.list];
    events.sort((a, b) => a.start - b.start || a.firstRow - b.firstRow);
    for (const [kind, count] of this.loose.notListed())
      this.notListed[kind] = (this.notListed[kind] ?? 0) + count;
    return {
      rows: this.rows,
      duration: this.rows === 0 ? 0 : time,
      interval: this.levels.interval,
      channels: this.channels,
      way: this.way.source,
      totals: totalsOf(this.passes.map(({ totals }) => totals)),
      passes: this.passes,
      events,
      notListed: this.notListed,
      strikes: this.strikes,
    };
  }

  private step(now: Row): void {
    const { before, pass } = this;
    const first = this.rows === 0;
    this.rows += 1;
    const elapsed = first ? 0 : now.time - before.time;
    if (this.notes.size > 0) this.tellNote(now);
    if (!first && !(elapsed > 0)) {
      if (elapsed < 0)
        this.tell('clock_step', [now.time, before.time], [now.row, now.row], { value: elapsed });
      before.time = now.time;
      return;
    }
    const silent = elapsed > this.silence;
    now.held = silent ? this.levels.interval : elapsed;
    if (!Number.isNaN(now.volts)) this.cleanVolts(now);
    if (!Number.isNaN(now.amps)) this.cleanAmps(now);
    const wayBefore = this.way.s;
    const setWay = this.way.source === 'arc_time' ? this.setWay(now, elapsed) : 0;
    this.way.moveOn(now, elapsed, this.state === ARC, this.levels.travel, setWay);
    now.way = this.way.s;
    if (this.way.spike !== undefined) this.tellJump(now, wayBefore);
    const state = nextState(this.state, now.volts, now.amps, this.states);
    if (silent) this.tellGap(now, wayBefore, state);
    if (pass !== undefined && (this.state === ARC || state === ARC)) this.account(pass, now, state, silent);
    if (state !== this.state) this.turn(state, this.mark(now.time, now.row));
    // the interval in which the arc of a pass is struck belongs to it
    if (this.pass !== pass && this.pass !== undefined && !silent)
      this.pass.integrate(before, now, this.electrode);
    if (this.pass !== undefined && this.state === ARC) {
      const usual = this.anchor.expectedPass()?.travel ?? this.levels.travel;
      const settled = now.time - this.pass.struck.time > SETTLING + 1.5 * this.dwell();
      this.watched.row(this.pass, this.way, usual, settled, now);
    }
    this.before = now;
    this.now = before;
  }

  private mark(time: number, row: number): Mark {
    return { time, row, way: this.wayOf(this.way.s) };
  }

  /** A way of the log from where the pass was struck; not a number where nothing tells it [m]. */
  private wayOf(s: number): number {
    return this.way.source === 'none' ? Number.NaN : s - (this.pass?.origin ?? 0);
  }

  private cleanVolts(now: Row): void {
    // Voltage jumps when the arc goes out: without the current to tell, only what no source gives is a spike.
    const arcs = this.isSteady(now.time) && now.amps > this.states.currentOff;
    now.volts = this.volts.clean(now.volts, !arcs);
    if (this.volts.ended !== undefined) this.tellSpike(this.volts, 'voltage', now);
  }

  private cleanAmps(now: Row): void {
    now.amps = this.amps.clean(now.amps, !this.isSteady(now.time) || now.volts < this.states.shortUntil);
    if (this.amps.ended !== undefined) this.tellSpike(this.amps, 'current', now);
  }

  /** The arc burns, and has for a while since it was struck. */
  private isSteady(time: number): boolean {
    return this.state === ARC && this.pass !== undefined && time - this.pass.struck.time > SETTLING;
  }

  /** Way that the carriage makes at set travel: it waits while the pit is made, and stops when the loss window is over [m]. */
  private setWay({ time, held }: Row, elapsed: number): number {
    const { pass } = this;
    const runs = this.state === ARC || (pass !== undefined && time - pass.lost.time < this.lossWindow);
    if (!runs || (pass !== undefined && time - pass.struck.time < this.dwell())) return 0;
    return this.setTravel() * (this.state === ARC ? elapsed : held);
  }

  private setTravel(): number {
    return this.anchor.expectedPass()?.travel ?? 0;
  }

  private dwell(): number {
    return this.anchor.expectedPass()?.dwell ?? 0;
  }

  private tellSpike(reading: SteadyReading, name: 'voltage' | 'current', { time, row }: Row): void {
    const { value, around, rows } = reading.ended!;
    reading.ended = undefined;
    const facts = { reading: name, value, against: around };
    this.tell('spike', [time - rows * this.levels.interval, time], [row - rows, row - 1], facts);
  }

  private tellJump({ time, row }: Row, wayBefore: number): void {
    const spike = this.way.spike!;
    this.way.spike = undefined;
    const facts = { reading: 'position', value: spike.by } as const;
    this.tell('spike', [spike.time, time], [spike.row, row - 1], facts, [wayBefore, wayBefore]);
  }

  private tellNote({ time, row }: Row): void {
    const note = this.notes.get(row);
    if (note === undefined) return;
    this.notes.delete(row);
    if (note.kind === 'set_back' || note.kind === 'daylight_saving')
      this.tell('clock_step', [time, time], [row, row], { value: note.by_s });
  }

  private tellGap({ time, row }: Row, wayBefore: number, state: ArcStateCode): void {
    const passed = time - this.before.time;
    const ran = Math.abs(this.way.s - wayBefore);
    const speed = this.levels.travel ?? Number.NaN;
    // Where the carriage covered the way of one row only, time did not pass: the clock was set on.
    const usual = speed * this.levels.interval;
    const clock =
      this.way.source === 'position' &&
      this.state === ARC &&
      state === ARC &&
      ran > 0.3 * usual &&
      ran < 3 * usual &&
      ran < 0.2 * speed * passed;
    const facts = clock ? { value: passed } : {};
    this.tell(clock ? 'clock_step' : 'gap', [this.before.time, time], [this.before.row, row], facts, [
      wayBefore,
      this.way.s,
    ]);
  }

  /** Tells an event that need not lie in a pass. */
  private tell(
    kind: EventKind,
    times: readonly [number, number],
    rows: readonly [number, number],
    facts: Omit<EventFacts, 'duration'>,
    [from, to]: readonly [number, number] = [this.way.s, this.way.s],
  ): void {
    const { pass } = this;
    if (pass === undefined || this.state !== ARC) {
      this.loose.add(kind, times, rows, facts);
      return;
    }
    const stretch = {
      from: { time: times[0], row: rows[0], way: this.wayOf(from) },
      to: { time: times[1], row: rows[1], way: this.wayOf(to) },
    };
    pass.add(kind, stretch, rows[1], facts);
  }

  /** Adds up what the interval before this row gave to the pass. */
  private account(pass: OpenPass, now: Row, state: ArcStateCode, silent: boolean): void {
    const { before, expected, electrode } = this;
    const { held } = now;
    const burned = this.state === ARC;
    if (!silent) pass.integrate(before, now, electrode);
    if (!silent && burned && state === ARC) pass.average(before, now);
    if (!burned) return;
    pass.arcTime += held;
    if (!Number.isNaN(now.feed) && now.feed > 0) {
      pass.fed += now.feed * held;
      electrode.addFeed(now.feed * held);
    }
    if (this.way.source === 'none') return;
    const power = before.volts * before.amps;
    const next = now.volts * now.amps;
    // What the log lacks is taken as it was set.
    const volts = !Number.isNaN(before.volts) ? before.volts : (expected?.voltage ?? 0);
    const amps = !Number.isNaN(before.amps) ? before.amps : (expected?.current ?? 0);
    const watts =
      !Number.isNaN(power) && !Number.isNaN(next) && state === ARC ? 0.5 * (power + next) : volts * amps;
    const goesOn = silent && state === ARC;
    const time = goesOn ? now.time - before.time : held;
    const { origin } = pass;
    // The dwell at the strike makes the pit that the arc then runs with: it stands for the way before the strike.
    const lead = this.setTravel() * Math.max(0, this.dwell() - (before.time - pass.start.time));
    const leadAfter = Math.max(0, lead - this.setTravel() * time);
    const { piece } = this;
    piece.from = before.way - origin - lead;
    piece.to = now.way - origin - leadAfter;
    piece.energy = watts * time;
    piece.time = time;
    piece.seen = !goesOn;
    pass.course.add(piece);
    if (state === ARC && !silent && this.isSteady(before.time)) {
      pass.volts.add(before, now, origin);
      pass.amps.add(before, now, origin);
    }
  }

  /** The state turns at a row. */
  private turn(state: ArcStateCode, mark: Mark): void {
    if (this.state === ARC) {
      this.endBurn(mark);
      this.outTime = 0;
      this.shortTime = 0;
      this.lastShort = undefined;
    } else {
      const time = mark.time - this.runStart.time;
      if (this.state === SHORT) {
        this.shortTime += time;
        this.lastShort = { from: this.runStart, to: mark };
      } else if (this.state === OPEN || this.state === OFF) {
        this.outTime += time;
        // A short before a long time without current belongs to no start.
        if (state !== ARC || time > this.lossWindow) this.lastShort = undefined;
      }
    }
    this.state = state;
    this.runStart = mark;
    if (state === ARC) this.strike(mark);
  }

  private endBurn(mark: Mark): void {
    const { pass } = this;
    if (pass === undefined) return;
    pass.gouged += Math.abs(mark.way - pass.burning.way);
    pass.lost = mark;
  }

  private strike(mark: Mark): void {
    if (this.pass !== undefined && this.isNewPass(this.pass, mark)) this.closePass(this.pass);
    if (this.pass === undefined) this.openPass(mark);
    else this.burnAgain(this.pass, mark);
  }

  private openPass(mark: Mark): void {
    const start = { ...mark, way: this.way.source === 'none' ? Number.NaN : 0 };
    const pass = new OpenPass(start, this.way.s, this.levels);
    this.pass = pass;
    this.watched.begin(start);
    if (this.lastShort === undefined) return;
    const { from, to } = this.lastShort;
    const touch = { from: { ...from, way: start.way }, to: { ...to, way: start.way } };
    pass.add('touch_down', touch, to.row - 1);
  }

  private isNewPass(pass: OpenPass, mark: Mark): boolean {
    const pause = mark.time - pass.lost.time;
    if (pause > PAUSE_MOST) return true;
    if (this.way.source === 'none') return pause > PAUSE_BLIND;
    const ran = Math.abs(pass.lost.way);
    const now = mark.way * (Math.sign(pass.lost.way) || 1);
    if (ran > 0.05 && now < 0.5 * ran) return true;
    const length = this.anchor.expectedLength();
    if (length !== undefined) return pause > 2 && ran >= 0.95 * length;
    return pause > 5 && now - ran > Math.max(0.1, 0.5 * ran);
  }

  private burnAgain(pass: OpenPass, mark: Mark): void {
    const pause = mark.time - pass.lost.time;
    const stretch = { from: pass.lost, to: mark };
    const way = Math.abs(mark.way - pass.lost.way);
    const lastRow = mark.row - 1;
    const slack = 0.25 * this.levels.interval;
    pass.burning = mark;
    if (this.outTime >= this.lossWindow - slack) {
      const burnt = this.electrode.burnt(this.expected, pass.charge !== 0);
      const change = isElectrodeChange(pass, pause, this.expected, burnt);
      this.watched.end(pass.lost);
      pass.struck = mark;
      if (change) this.electrode.change();
      else pass.outTime += pause;
      const orPass = change && (this.expected === undefined || this.way.source === 'none');
      pass.add(change ? 'electrode_change' : 'arc_out', stretch, lastRow, { way, orPass });
      if (this.lastShort !== undefined) pass.add('restart_short', this.lastShort, this.lastShort.to.row - 1);
    } else if (
      this.shortTime >= Math.max(SHORT_SHARE * this.lossWindow, SHORT_INTERVALS * this.levels.interval)
    )
      pass.add('short', stretch, lastRow, { way });
    else pass.brief += 1;
    this.watched.begin(mark);
  }

  private closePass(pass: OpenPass): void {
    this.watched.end(pass.lost);
    this.pass = undefined;
    if (pass.arcTime < PASS_LEAST) {
      this.strikes += 1;
      return;
    }
    const settled = settlePass(pass, {
      number: this.passes.length + 1,
      way: this.way.source,
      channels: this.channels,
      levels: this.levels,
      expected: this.expected,
      anchor: this.anchor,
    });
    this.passes.push(settled.pass);
    this.events.push(...settled.events);
    for (const [kind, count] of pass.notListed()) this.notListed[kind] = (this.notListed[kind] ?? 0) + count;
  }
}

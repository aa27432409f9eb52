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
import { ArcWatch, type Ran } from './arc-watch.ts';
import {
  GAP_INTERVALS,
  GAP_LEAST,
  LOSS_WINDOW,
  PASS_LEAST,
  PAUSE_BLIND,
  PAUSE_MOST,
  POSITION_JUMP,
  POSITION_ROWS,
  SETTLING,
  SHORT_INTERVALS,
  SHORT_SHARE,
} from './event-thresholds.ts';
import { eventWords } from './event-words.ts';
import type { RunExpectation } from './expectation.ts';
import type { Mark } from './lasting.ts';
import { LevelFinder, type LogLevels } from './levels.ts';
import type { Channel, ClockNote, LogBatch } from './log-batch.ts';
import { EVENTS_MOST, isElectrodeChange, OpenPass } from './open-pass.ts';
import type { EventKind, PassRun, RunEvent, RunOutcome, WaySource } from './outcome.ts';
import { Anchor } from './place.ts';
import { settlePass } from './settle-pass.ts';
import { SteadyReading } from './steady-reading.ts';
import { totalsOf } from './totals.ts';

/** Reviews the rows of a log as they come, in flat memory. */
export interface RunReview {
  /** Takes rows in the order of the file; the lists must not be changed afterwards. */
  readonly push: (batch: LogBatch, notes?: readonly ClockNote[]) => void;
  /** Ends the log and gives what it tells; nothing may be pushed afterwards. */
  readonly end: () => RunOutcome;
}

/**
 * Reviews a log while it is read: states of the arc, passes, events, places and sums.
 *
 * Set points come from the first rows with an arc; a plan, where there is one, says what they ought to be. The memory does
 * not grow with the log but with what happens in it, up to a fixed number of events of each kind.
 *
 * @param expected - what the plan leads one to expect [record], from `expectationOf`, or left out
 * @returns the review under way [record]
 * @source judgement, no source: shares and times named in this file; hysteresis, bridging and least length in this order
 * @example
 * reviewRun().end().rows // => 0
 */
export function reviewRun(expected?: RunExpectation): RunReview {
  const machine = new Machine(expected);
  const finder = new LevelFinder(expected);
  let found = false;
  const begin = (): void => {
    machine.levelsAre(finder.levels());
    for (const batch of finder.release()) machine.advance(batch);
  };
  return {
    push: (batch, notes = []) => {
      for (const note of notes) machine.clockNote(note);
      if (found) {
        machine.advance(batch);
        return;
      }
      if (!finder.take(batch)) return;
      found = finder.sawArc;
      begin();
    },
    end: () => {
      if (!found) begin();
      return machine.end();
    },
  };
}

class Machine {
  private readonly expected: RunExpectation | undefined;
  private readonly lossWindow: number;
  private readonly anchor: Anchor;
  private levels!: LogLevels;
  private states!: StateLevels;
  private volts!: SteadyReading;
  private amps!: SteadyReading;
  private way: WaySource = 'none';
  private channels: Channel[] = [];
  private rows = 0;
  // the row before
  private time = 0;
  private row = 0;
  private u = Number.NaN;
  private i = Number.NaN;
  private v = Number.NaN;
  private state: ArcStateCode = OFF;
  /** Way of the log so far, from any zero [m]. */
  private s = 0;
  private x = Number.NaN;
  private jumpRows = 0;
  private jumpFrom: Mark | undefined;
  private jumpBy = 0;
  // the break of the arc under way
  private runStart: Mark = { time: 0, row: 0, way: 0 };
  private outTime = 0;
  private shortTime = 0;
  private lastShort: { from: Mark; to: Mark } | undefined;
  private readonly notes = new Map<number, ClockNote>();
  private pass: OpenPass | undefined;
  private readonly passes: PassRun[] = [];
  private readonly events: RunEvent[] = [];
  private readonly notListed: Partial<Record<EventKind, number>> = {};
  private readonly counts: Partial<Record<EventKind, number>> = {};
  private strikes = 0;
  /** Charge and feed since the last electrode was put in, from pass to pass [A s] and [m]. */
  private chargeOfElectrode = 0;
  private fedOfElectrode = 0;
  private watched!: ArcWatch;
  private wheel = 0;

  constructor(expected: RunExpectation | undefined) {
    this.expected = expected;
    this.lossWindow = expected?.lossWindow ?? LOSS_WINDOW;
    this.anchor = new Anchor(expected);
  }

  levelsAre(levels: LogLevels): void {
    this.levels = levels;
    this.states = stateLevels(levels);
    const { voltage, noLoad, current } = levels;
    const voltsMost = Math.max(1.15 * (noLoad ?? 0), 2.2 * (voltage ?? 45));
    this.volts = new SteadyReading(voltage, voltsMost, levels.voltageRepeats);
    this.amps = new SteadyReading(current, 2.5 * (current ?? 2000), levels.currentRepeats);
    const { volts, amps } = this;
    this.watched = new ArcWatch(levels, this.lossWindow, { volts, amps }, (kind, stretch, facts) => {
      this.pass?.add(kind, stretch, stretch.to.row - 1, facts);
    });
  }

  clockNote(note: ClockNote): void {
    this.notes.set(note.row, note);
  }

  advance({ time_s, row, channels }: LogBatch): void {
    const count = time_s.length;
    if (this.rows === 0 && count > 0) {
      this.channels = Object.keys(channels) as Channel[];
      this.way =
        channels.position_m !== undefined
          ? 'position'
          : channels.travel_m_per_s !== undefined
            ? 'travel'
            : this.expected !== undefined
              ? 'arc_time'
              : 'none';
    }
    const none = Number.NaN;
    const { voltage_V, current_A, travel_m_per_s, position_m } = channels;
    const { feed_m_per_s, air_pressure_Pa, air_flow_m3_per_s } = channels;
    for (let n = 0; n < count; n += 1) {
      this.step(
        time_s[n]!,
        row[n]!,
        voltage_V === undefined ? none : voltage_V[n]!,
        current_A === undefined ? none : current_A[n]!,
        travel_m_per_s === undefined ? none : travel_m_per_s[n]!,
        position_m === undefined ? none : position_m[n]!,
        feed_m_per_s === undefined ? none : feed_m_per_s[n]!,
        air_pressure_Pa === undefined ? none : air_pressure_Pa[n]!,
        air_flow_m3_per_s === undefined ? none : air_flow_m3_per_s[n]!,
      );
    }
  }

  end(): RunOutcome {
    if (this.pass !== undefined) {
      if (this.state === ARC) this.endBurn(this.mark(this.time + this.levels.interval, this.row + 1));
      this.closePass();
    }
    this.events.sort((a, b) => a.start - b.start || a.firstRow - b.firstRow);
    return {
      rows: this.rows,
      duration: this.time,
      interval: this.levels.interval,
      channels: this.channels,
      way: this.way,
      totals: totalsOf(this.passes.map(({ totals }) => totals)),
      passes: this.passes,
      events: this.events,
      notListed: this.notListed,
      strikes: this.strikes,
    };
  }

  private step(
    time: number,
    row: number,
    volts: number,
    amps: number,
    speed: number,
    position: number,
    feed: number,
    air: number,
    flow: number,
  ): void {
    const first = this.rows === 0;
    this.rows += 1;
    const elapsed = first ? 0 : time - this.time;
    if (this.notes.size > 0) this.tellNote(time, row);
    if (!first && !(elapsed > 0)) {
      if (elapsed < 0) this.loose('clock_step', time, this.time, row, row, { value: elapsed });
      this.time = time;
      return;
    }
    const silent = elapsed > Math.max(GAP_LEAST, GAP_INTERVALS * this.levels.interval);
    const held = silent ? this.levels.interval : elapsed;
    const u = !Number.isNaN(volts) ? this.cleanVolts(volts, amps, time, row) : volts;
    const i = !Number.isNaN(amps) ? this.cleanAmps(amps, u, time, row) : amps;
    const before = this.s;
    this.moveOn(elapsed, held, speed, position, time, row);
    const state = nextState(this.state, u, i, this.states);
    if (silent) this.tellGap(time, row, before, state);
    const { pass } = this;
    if (pass !== undefined) this.account(pass, state, silent, elapsed, held, before, u, i, feed);
    if (state !== this.state) this.turn(state, this.mark(time, row));
    // the interval in which the arc of a pass is struck belongs to it
    if (this.pass !== pass && this.pass !== undefined && !silent) this.integrate(this.pass, u, i, held);
    if (this.pass !== undefined && this.state === ARC) {
      const settled = time - this.pass.struck.time > SETTLING + 1.5 * this.dwell();
      const at = this.wayOf(this.s);
      this.watched.row(this.pass, this.ran(), settled, time, row, at, u, i, speed, feed, air, flow);
    }
    this.time = time;
    this.row = row;
    this.u = u;
    this.i = i;
    if (!Number.isNaN(speed)) this.v = speed;
  }

  private mark(time: number, row: number): Mark {
    return { time, row, way: this.wayOf(this.s) };
  }

  private wayOf(s: number): number {
    if (this.way === 'none') return Number.NaN;
    return s - (this.pass?.origin ?? 0);
  }

  private cleanVolts(volts: number, amps: number, time: number, row: number): number {
    // Voltage jumps when the arc goes out: without the current to tell, only what no source gives is a spike.
    const arcs = this.isSteady(time) && amps > this.states.currentOff;
    const value = this.volts.clean(volts, !arcs);
    if (this.volts.ended !== undefined) this.tellSpike(this.volts, 'voltage', time, row);
    return value;
  }

  private cleanAmps(amps: number, volts: number, time: number, row: number): number {
    const value = this.amps.clean(amps, !this.isSteady(time) || volts < this.states.shortUntil);
    if (this.amps.ended !== undefined) this.tellSpike(this.amps, 'current', time, row);
    return value;
  }

  /** The arc burns, and has for a while since it was struck. */
  private isSteady(time: number): boolean {
    return this.state === ARC && this.pass !== undefined && time - this.pass.struck.time > SETTLING;
  }

  private tellSpike(reading: SteadyReading, name: 'voltage' | 'current', time: number, row: number): void {
    const { value, around, rows } = reading.ended!;
    reading.ended = undefined;
    const from = time - rows * this.levels.interval;
    this.loose('spike', from, time, row - rows, row - 1, { reading: name, value, against: around });
  }

  private tellNote(time: number, row: number): void {
    const note = this.notes.get(row);
    if (note === undefined) return;
    this.notes.delete(row);
    if (note.kind === 'set_back') this.loose('clock_step', time, time, row, row, { value: note.by_s });
  }

  private tellGap(time: number, row: number, before: number, state: ArcStateCode): void {
    const ran = Math.abs(this.s - before);
    const speed = this.levels.travel ?? Number.NaN;
    // Where the carriage covered the way of one row only, time did not pass: the clock was set on.
    const usual = speed * this.levels.interval;
    const clock =
      this.way === 'position' &&
      this.state === ARC &&
      state === ARC &&
      ran > 0.3 * usual &&
      ran < 3 * usual &&
      ran < 0.2 * speed * (time - this.time);
    const facts = clock ? { value: time - this.time } : {};
    this.loose(clock ? 'clock_step' : 'gap', this.time, time, this.row, row, facts, before);
  }

  /** An event that need not lie in a pass. */
  private loose(
    kind: EventKind,
    start: number,
    end: number,
    firstRow: number,
    lastRow: number,
    facts: Parameters<OpenPass['add']>[3],
    from = this.s,
  ): void {
    const { pass } = this;
    if (pass !== undefined && this.state === ARC) {
      const stretch = {
        from: { time: start, row: firstRow, way: this.wayOf(from) },
        to: { time: end, row: lastRow, way: this.wayOf(this.s) },
      };
      pass.add(kind, stretch, lastRow, facts);
      return;
    }
    const count = (this.counts[kind] ?? 0) + 1;
    this.counts[kind] = count;
    if (count > EVENTS_MOST) {
      this.notListed[kind] = (this.notListed[kind] ?? 0) + 1;
      return;
    }
    this.events.push({
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

  /** Moves along the log's way by what the row tells of it. */
  private moveOn(
    elapsed: number,
    held: number,
    speed: number,
    position: number,
    time: number,
    row: number,
  ): void {
    if (!Number.isNaN(speed) && !Number.isNaN(this.v)) this.wheel += 0.5 * (speed + this.v) * elapsed;
    if (this.way === 'position') {
      this.moveTo(position, elapsed, time, row);
    } else if (this.way === 'travel') {
      const now = !Number.isNaN(speed) ? speed : this.v;
      const then = !Number.isNaN(this.v) ? this.v : now;
      if (!Number.isNaN(now)) this.s += 0.5 * (now + then) * elapsed;
    } else if (this.way === 'arc_time') {
      // The carriage stops when the loss window is over.
      const runs =
        this.state === ARC || (this.pass !== undefined && time - this.pass.lost.time < this.lossWindow);
      if (runs && !(this.pass !== undefined && time - this.pass.struck.time < this.dwell()))
        this.s += this.setTravel() * (this.state === ARC ? elapsed : held);
    }
  }

  private moveTo(position: number, elapsed: number, time: number, row: number): void {
    if (Number.isNaN(position)) return;
    if (Number.isNaN(this.x)) {
      this.x = position;
      this.s = position;
      return;
    }
    const most = Math.max(POSITION_JUMP, 8 * (this.levels.travel ?? 0.05) * elapsed);
    if (Math.abs(position - this.x) > most && this.state === ARC && elapsed < GAP_LEAST * 5) {
      this.jumpRows += 1;
      if (this.jumpRows === 1) {
        this.jumpFrom = { time, row, way: 0 };
        this.jumpBy = position - this.x;
      }
      if (this.jumpRows < POSITION_ROWS) return;
    }
    if (this.jumpRows > 0 && this.jumpRows < POSITION_ROWS)
      this.loose('spike', this.jumpFrom!.time, time, this.jumpFrom!.row, row - 1, {
        reading: 'position',
        value: this.jumpBy,
      });
    this.jumpRows = 0;
    this.x = position;
    this.s = position;
  }

  private setTravel(): number {
    const planned = this.anchor.expectedPass();
    return planned?.travel ?? 0;
  }

  private dwell(): number {
    return this.anchor.expectedPass()?.dwell ?? 0;
  }

  /** Adds up what the interval before this row gave. */
  private account(
    pass: OpenPass,
    state: ArcStateCode,
    silent: boolean,
    elapsed: number,
    held: number,
    before: number,
    u: number,
    i: number,
    feed: number,
  ): void {
    const burned = this.state === ARC;
    if (!burned && state !== ARC) return;
    const power = this.u * this.i;
    const next = u * i;
    if (!silent) this.integrate(pass, u, i, held);
    if (!silent && burned && state === ARC) {
      const volts = 0.5 * (u + this.u) * held;
      if (!Number.isNaN(volts)) {
        pass.voltTime += volts;
        pass.steadyTime += held;
      }
      const amps = 0.5 * (i + this.i) * held;
      if (!Number.isNaN(amps)) {
        pass.ampTime += amps;
        pass.ampSpan += held;
      }
    }
    if (!burned) return;
    pass.arcTime += held;
    if (!Number.isNaN(feed) && feed > 0) {
      pass.fed += feed * held;
      this.fedOfElectrode += feed * held;
    }
    if (this.way === 'none') return;
    // What the log lacks is taken as it was set.
    const volts = !Number.isNaN(this.u) ? this.u : (this.expected?.voltage ?? 0);
    const amps = !Number.isNaN(this.i) ? this.i : (this.expected?.current ?? 0);
    const watts =
      !Number.isNaN(power) && !Number.isNaN(next) && state === ARC ? 0.5 * (power + next) : volts * amps;
    const goesOn = silent && state === ARC;
    const time = goesOn ? elapsed : held;
    // The dwell at the strike makes the pit that the arc then runs with: it stands for the way before the strike.
    const lead = this.setTravel() * Math.max(0, this.dwell() - (this.time - pass.start.time));
    const leadAfter = Math.max(0, lead - this.setTravel() * time);
    pass.course.add(
      before - pass.origin - lead,
      this.s - pass.origin - leadAfter,
      watts * time,
      time,
      !goesOn,
    );
    if (state === ARC && !silent && this.isSteady(this.time)) {
      pass.volts.add(u, held, this.time, this.row, before - pass.origin);
      pass.amps.add(i, held, this.time, this.row, before - pass.origin);
    }
  }

  /** Energy and charge of the interval before this row, by the trapezoid rule. */
  private integrate(pass: OpenPass, u: number, i: number, held: number): void {
    const work = 0.5 * (this.u * this.i + u * i) * held;
    if (!Number.isNaN(work)) pass.energy += work;
    const charge = 0.5 * (this.i + i) * held;
    if (!Number.isNaN(charge)) {
      pass.charge += charge;
      this.chargeOfElectrode += charge;
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
    if (this.pass !== undefined && this.isNewPass(this.pass, mark)) this.closePass();
    if (this.pass === undefined) {
      this.openPass(mark);
      return;
    }
    this.burnAgain(this.pass, mark);
  }

  private openPass(mark: Mark): void {
    const origin = this.s;
    const start = { ...mark, way: this.way === 'none' ? Number.NaN : 0 };
    const pass = new OpenPass(start, origin, this.levels);
    this.pass = pass;
    this.watched.begin(start);
    if (this.lastShort !== undefined) {
      const from = { ...this.lastShort.from, way: start.way };
      pass.add(
        'touch_down',
        { from, to: { ...this.lastShort.to, way: start.way } },
        this.lastShort.to.row - 1,
      );
    }
  }

  private isNewPass(pass: OpenPass, mark: Mark): boolean {
    const pause = mark.time - pass.lost.time;
    if (pause > PAUSE_MOST) return true;
    if (this.way === 'none') return pause > PAUSE_BLIND;
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
      const burnt =
        this.fedOfElectrode > 0
          ? this.fedOfElectrode
          : this.expected === undefined || pass.charge === 0
            ? undefined
            : this.chargeOfElectrode * this.expected.wear;
      const change = isElectrodeChange(pass, pause, this.expected, burnt);
      this.watched.end(pass.lost);
      pass.struck = mark;
      if (change) {
        this.chargeOfElectrode = 0;
        this.fedOfElectrode = 0;
      } else pass.outTime += pause;
      const orPass = change && (this.expected === undefined || this.way === 'none');
      pass.add(change ? 'electrode_change' : 'arc_out', stretch, lastRow, { way, orPass });
      if (this.lastShort !== undefined) pass.add('restart_short', this.lastShort, this.lastShort.to.row - 1);
    } else if (
      this.shortTime >= Math.max(SHORT_SHARE * this.lossWindow, SHORT_INTERVALS * this.levels.interval)
    )
      pass.add('short', stretch, lastRow, { way });
    else pass.brief += 1;
    this.watched.begin(mark);
  }

  /** How the carriage ran up to this row. */
  private ran(): Ran {
    const usual = this.anchor.expectedPass()?.travel ?? this.levels.travel;
    return { source: this.way, way: this.s, wheel: this.wheel, usual };
  }

  private closePass(): void {
    const pass = this.pass!;
    this.watched.end(pass.lost);
    this.pass = undefined;
    if (pass.arcTime < PASS_LEAST) {
      this.strikes += 1;
      return;
    }
    const settled = settlePass(pass, {
      number: this.passes.length + 1,
      way: this.way,
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

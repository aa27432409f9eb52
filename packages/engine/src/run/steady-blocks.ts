import type { Row } from './row.ts';

/** Values of which a block's median is taken at most [-]: of more rows every n-th is taken. */
const VALUES = 64;
/** Blocks kept at most; then two become one, so that a day needs no more than an hour [-]. */
const BLOCKS_MOST = 4096;

/** Medians of stretches with the arc burning steadily, each with the place where it begins. */
export interface Blocks {
  readonly value: Float64Array;
  readonly time: Float64Array;
  readonly row: Float64Array;
  readonly way: Float64Array;
}

/** Cuts the arc of one pass into blocks of equal arc time and keeps the median of each. */
export class SteadyBlocks {
  private readonly reading: 'volts' | 'amps';
  private length: number;
  private readonly stride0: number;
  private stride: number;
  private skip = 0;
  private held = 0;
  private count = 0;
  private readonly values = new Float64Array(VALUES);
  private start = { time: 0, row: 0, way: 0 };
  private blocks: { value: number; time: number; row: number; way: number }[] = [];

  constructor(reading: 'volts' | 'amps', length: number, interval: number) {
    this.reading = reading;
    this.length = length;
    this.stride0 = Math.max(1, Math.ceil(length / interval / VALUES));
    this.stride = this.stride0;
  }

  /** Adds a row, whose reading holds from the row before on; ways are those of the pass from its origin. */
  add(before: Row, now: Row, origin: number): void {
    if (this.count === 0 && this.held === 0)
      this.start = { time: before.time, row: before.row, way: before.way - origin };
    this.held += now.held;
    if (this.skip > 0) this.skip -= 1;
    else if (this.count < VALUES) {
      const value = this.reading === 'volts' ? now.volts : now.amps;
      if (!Number.isNaN(value)) {
        this.values[this.count] = value;
        this.count += 1;
        this.skip = this.stride - 1;
      }
    }
    if (this.held >= this.length && this.count > 0) this.close();
  }

  blocksSoFar(): Blocks {
    const list = (name: 'value' | 'time' | 'row' | 'way') =>
      Float64Array.from(this.blocks, (block) => block[name]);
    return { value: list('value'), time: list('time'), row: list('row'), way: list('way') };
  }

  private close(): void {
    const sorted = this.values.subarray(0, this.count).sort();
    const middle = (this.count - 1) / 2;
    const value = (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
    this.blocks.push({ value, ...this.start });
    this.count = 0;
    this.held = 0;
    this.skip = 0;
    if (this.blocks.length < BLOCKS_MOST) return;
    this.blocks = this.blocks
      .filter((_, i) => i % 2 === 0)
      .map((block, i) => ({ ...block, value: (block.value + this.blocks[2 * i + 1]!.value) / 2 }));
    this.length *= 2;
    this.stride *= 2;
  }
}

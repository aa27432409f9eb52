import { ByteWriter, ParquetWriter } from 'hyparquet-writer';
import type { Channel, LogBatch } from './log-batch.ts';

/** Rows of a row group: enough to pack well, few enough to be held. */
const GROUP_ROWS = 65_536;

/**
 * Writes a log as Parquet, piece by piece: number of the row, elapsed time and channels in SI, each unit in the name of
 * its column. A channel without a value is NaN.
 */
export class LogParquetWriter {
  readonly #bytes = new ByteWriter();
  #writer: ParquetWriter | undefined;
  #channels: readonly Channel[] = [];
  #columns: Float64Array[] = [];
  #filled = 0;

  /** Takes rows, all with the same channels, and gives the bytes that are ready [bytes]. */
  push({ time_s, row, channels }: LogBatch): Uint8Array {
    if (!this.#writer) this.#begin(Object.keys(channels) as Channel[]);
    const sources = [row, time_s, ...this.#channels.map((channel) => channels[channel]!)];
    for (let from = 0; from < time_s.length; ) {
      const to = Math.min(time_s.length, from + GROUP_ROWS - this.#filled);
      this.#columns.forEach((column, index) => {
        column.set(sources[index]!.subarray(from, to), this.#filled);
      });
      this.#filled += to - from;
      from = to;
      if (this.#filled === GROUP_ROWS) this.#group();
    }
    return this.#ready();
  }

  /** Gives the last bytes of the file [bytes]. */
  end(): Uint8Array {
    if (!this.#writer) this.#begin([]);
    if (this.#filled > 0) this.#group();
    this.#writer!.finish();
    return this.#ready();
  }

  #begin(channels: readonly Channel[]): void {
    this.#channels = channels;
    this.#columns = ['row', 'time_s', ...channels].map(() => new Float64Array(GROUP_ROWS));
    const names = ['row', 'time_s', ...channels];
    this.#writer = new ParquetWriter({
      writer: this.#bytes,
      schema: [
        { name: 'log', num_children: names.length },
        ...names.map((name) => ({ name, type: 'DOUBLE' as const, repetition_type: 'REQUIRED' as const })),
      ],
      createdBy: 'furrow',
    });
  }

  #group(): void {
    const names = ['row', 'time_s', ...this.#channels];
    void this.#writer!.write({
      columnData: names.map((name, index) => ({ name, data: this.#columns[index]!.slice(0, this.#filled) })),
      rowGroupSize: GROUP_ROWS,
    });
    this.#filled = 0;
  }

  /** Takes the bytes out of the writer, which goes on counting from where it is. */
  #ready(): Uint8Array {
    const bytes = new Uint8Array(this.#bytes.getBytes());
    this.#bytes.index = 0;
    return bytes;
  }
}

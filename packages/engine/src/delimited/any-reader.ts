import type { Outcome } from '../issue/index.ts';
import { beginsAsJson, JsonLinesReader } from './json-lines-reader.ts';
import { TableReader } from './table-reader.ts';
import type { GivenReading, TableReading } from './table-reading.ts';
import type { TableBatch, TableEnd, TableReaderOptions, TableSource } from './table-source.ts';

/** Bytes that tell one format from another [bytes]. */
const START = 64;

/** Reads a file of rows piece by piece, delimited text or JSON lines, whichever it begins as. */
export class AnyReader implements TableSource {
  readonly #given: GivenReading;
  readonly #options: TableReaderOptions;
  #start: Uint8Array = new Uint8Array(0);
  #source: TableSource | undefined;

  /**
   * @param given - what a person says of how the file is read [record]
   * @param options - rows of a batch, and whether texts are given [record]
   */
  constructor(given: GivenReading = {}, options: TableReaderOptions = {}) {
    this.#given = given;
    this.#options = options;
  }

  get reading(): TableReading | undefined {
    return this.#source?.reading;
  }

  push(bytes: Uint8Array): readonly TableBatch[] {
    if (this.#source) return this.#source.push(bytes);
    const start = new Uint8Array(this.#start.length + bytes.length);
    start.set(this.#start);
    start.set(bytes, this.#start.length);
    this.#start = start;
    return start.length < START ? [] : this.#begin().push(start);
  }

  end(): Outcome<{ readonly batches: readonly TableBatch[]; readonly end: TableEnd }> {
    if (this.#source) return this.#source.end();
    const source = this.#begin();
    const early = source.push(this.#start);
    const outcome = source.end();
    if (!outcome.ok) return outcome;
    return { ok: true, value: { ...outcome.value, batches: [...early, ...outcome.value.batches] } };
  }

  #begin(): TableSource {
    this.#source = beginsAsJson(this.#start)
      ? new JsonLinesReader(this.#given, this.#options)
      : new TableReader(this.#given, this.#options);
    return this.#source;
  }
}

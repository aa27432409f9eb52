import { type FileHandle, open } from 'node:fs/promises';

/** Why readings could not be put on disk; what came before is kept whole. */
export class JournalFailure extends Error {
  /** Whether the disk is full. */
  readonly full: boolean;

  constructor(path: string, error: NodeJS.ErrnoException) {
    const full = error.code === 'ENOSPC' || error.code === 'EDQUOT';
    super(
      full
        ? `The disk is full: no more can be written to ${path}. What was kept before is whole; make room and go on.`
        : `${path} cannot be written: ${error.message}`,
    );
    this.full = full;
  }
}

/** What of a file handle a journal needs. */
export interface JournalFile {
  write(
    bytes: Uint8Array,
    offset: number,
    length: number,
    position: number,
  ): Promise<{ bytesWritten: number }>;
  datasync(): Promise<void>;
  truncate(length: number): Promise<void>;
  close(): Promise<void>;
}

interface Waiting {
  readonly bytes: Uint8Array;
  readonly done: () => void;
  readonly fail: (error: Error) => void;
}

/**
 * A file to which lines are added as they arrive. `add` is done when its lines are on disk; lines that wait meanwhile
 * share the next write. A write that fails leaves the file as it was before.
 */
export class Journal {
  readonly path: string;
  readonly #file: JournalFile;
  #length: number;
  #waiting: Waiting[] = [];
  #writing: Promise<void> | undefined;

  constructor(path: string, file: JournalFile, length: number) {
    this.path = path;
    this.#file = file;
    this.#length = length;
  }

  /** Bytes that are on disk [bytes]. */
  get length(): number {
    return this.#length;
  }

  /** Adds whole lines; done when they are on disk, else a `JournalFailure`. */
  add(bytes: Uint8Array): Promise<void> {
    return new Promise((done, fail) => {
      this.#waiting.push({ bytes: new Uint8Array(bytes), done, fail });
      this.#writing ??= this.#writeAll();
    });
  }

  /** Ends it when everything that waits is written. */
  async close(): Promise<void> {
    await this.#writing;
    await this.#file.close();
  }

  async #writeAll(): Promise<void> {
    // whatever arrives in this turn goes with the first write
    await Promise.resolve();
    while (this.#waiting.length > 0) {
      const group = this.#waiting;
      this.#waiting = [];
      try {
        await this.#write(Buffer.concat(group.map(({ bytes }) => bytes)));
        for (const { done } of group) done();
      } catch (error) {
        const failure = new JournalFailure(this.path, error as NodeJS.ErrnoException);
        for (const { fail } of group) fail(failure);
      }
    }
    this.#writing = undefined;
  }

  async #write(bytes: Uint8Array): Promise<void> {
    let written = 0;
    try {
      while (written < bytes.length) {
        const { bytesWritten } = await this.#file.write(
          bytes,
          written,
          bytes.length - written,
          this.#length + written,
        );
        written += bytesWritten;
      }
      await this.#file.datasync();
    } catch (error) {
      // half a line would be taken for a damaged one
      await this.#file.truncate(this.#length).catch(() => undefined);
      throw error;
    }
    this.#length += bytes.length;
  }
}

/** Opens a journal, new or begun before; a last line that was cut by a crash is ended, so that the next stands alone. */
export async function openJournal(path: string): Promise<Journal> {
  let opened: FileHandle | undefined;
  try {
    // made where it is not there; written at places, which a file opened for appending does not allow
    await (await open(path, 'a')).close();
    const file = await open(path, 'r+');
    opened = file;
    const { size } = await file.stat();
    const journal = new Journal(path, file, size);
    if (size > 0) {
      const last = Buffer.alloc(1);
      await file.read(last, 0, 1, size - 1);
      if (last[0] !== 10) await journal.add(Buffer.from('\n'));
    }
    return journal;
  } catch (error) {
    await opened?.close();
    if (error instanceof JournalFailure) throw error;
    throw new JournalFailure(path, error as NodeJS.ErrnoException);
  }
}

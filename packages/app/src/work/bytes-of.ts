/** What browsers give to workers alone, and so not to the types of a page. */
declare class FileReaderSync {
  readAsArrayBuffer(piece: Blob): ArrayBuffer;
}

/** Reads a piece of a file at once, as only a worker may. */
export function bytesOf(piece: Blob): ArrayBuffer {
  return new FileReaderSync().readAsArrayBuffer(piece);
}

import { rename, rm, writeFile } from 'node:fs/promises';

/** Writes a file whole or not at all: first beside its place, then moved there. */
export async function writeWhole(file: string, content: Uint8Array): Promise<void> {
  const beside = `${file}.${process.pid}.part`;
  try {
    await writeFile(beside, content);
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

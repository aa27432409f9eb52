import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import asc from 'assemblyscript/asc';
import { ROOT } from './install.mjs';

const ROOM = 'packages/engine/src/numeric/kernel';
const SOURCE = `${ROOM}/diffusion.as`;
/** The module that carries the bytes, so that the engine reads no file. */
export const MODULE = `${ROOM}/diffusion-wasm.ts`;
/** The compiler wants a name that ends in .ts; under that name the engine's own compiler would read the source too. */
const ENTRY = 'diffusion.ts';

/** Compiles the heat kernel from its AssemblyScript source to the bytes of a WebAssembly module. */
export async function compileKernel() {
  let bytes;
  const flags = ['-O3', '--noAssert', '--runtime', 'stub', '--enable', 'simd', '--importMemory'];
  const { error, stderr } = await asc.main(
    [ENTRY, ...flags, '--noExportMemory', '--memoryBase', '0', '--outFile', 'diffusion.wasm'],
    {
      readFile: (name) => (name === ENTRY ? readFileSync(join(ROOT, SOURCE), 'utf8') : null),
      writeFile: (name, contents) => {
        if (name === 'diffusion.wasm') bytes = contents;
      },
      listFiles: () => [],
    },
  );
  if (error !== null || bytes === undefined)
    throw new Error(`${SOURCE} does not compile: ${stderr.toString()}`);
  return bytes;
}

/** The module's text for the bytes given. */
export function kernelModule(bytes) {
  const text = Buffer.from(bytes).toString('base64');
  const lines = text.match(/.{1,100}/g).map((line) => `  '${line}'`);
  return (
    '/** diffusion.as compiled by `npm run kernel`, in base64; a test compiles it again and compares. */\n' +
    `export const DIFFUSION_WASM: string =\n${lines.join(' +\n')};\n`
  );
}

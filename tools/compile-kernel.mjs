import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import asc from 'assemblyscript/asc';
import { ROOT } from './install.mjs';

/** The kernels of the engine: source, and the module that carries its bytes, so that the engine reads no file. */
export const KERNELS = [
  kernelOf('packages/engine/src/numeric/kernel', 'diffusion'),
  kernelOf('packages/engine/src/delimited', 'walk'),
];

function kernelOf(room, name) {
  return {
    name,
    source: `${room}/${name}.as`,
    module: `${room}/${name}-wasm.ts`,
    constant: `${name.toUpperCase()}_WASM`,
  };
}

/** Compiles a kernel from its AssemblyScript source to the bytes of a WebAssembly module. */
async function compileKernel({ name, source }) {
  // the compiler wants a name that ends in .ts; under that name the engine's own compiler would read the source too
  const entry = `${name}.ts`;
  const binary = `${name}.wasm`;
  let bytes;
  const flags = ['-O3', '--noAssert', '--runtime', 'stub', '--enable', 'simd', '--importMemory'];
  const { error, stderr } = await asc.main(
    [entry, ...flags, '--noExportMemory', '--memoryBase', '0', '--outFile', binary],
    {
      readFile: (file) => (file === entry ? readFileSync(join(ROOT, source), 'utf8') : null),
      writeFile: (file, contents) => {
        if (file === binary) bytes = contents;
      },
      listFiles: () => [],
    },
  );
  if (error !== null || bytes === undefined)
    throw new Error(`${source} does not compile: ${stderr.toString()}`);
  return bytes;
}

/** The text of a kernel's module. */
export async function kernelModule(kernel) {
  const text = Buffer.from(await compileKernel(kernel)).toString('base64');
  const lines = text.match(/.{1,100}/g).map((line) => `  '${line}'`);
  return (
    `/** ${kernel.name}.as compiled by \`npm run kernel\`, in base64; a test compiles it again and compares. */\n` +
    `export const ${kernel.constant}: string =\n${lines.join(' +\n')};\n`
  );
}

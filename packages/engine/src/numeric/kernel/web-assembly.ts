/** What the kernel needs of the WebAssembly that browsers and Node have; the engine knows neither's types. */
interface WebAssemblyHost {
  readonly Memory: new (size: { initial: number }) => { readonly buffer: ArrayBuffer };
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (
    module: object,
    imports: Readonly<Record<string, Readonly<Record<string, unknown>>>>,
  ) => { readonly exports: Readonly<Record<string, unknown>> };
}

/** WebAssembly of the place the engine runs in, where it has one. */
function webAssemblyHost(): WebAssemblyHost | undefined {
  return (globalThis as { WebAssembly?: WebAssemblyHost }).WebAssembly;
}

const PAGE = 65536;

/**
 * A module that is compiled when it is first asked for, once for all; null where WebAssembly is missing or refused.
 *
 * @param base64 - bytes of the module [text], in base64
 * @returns gives the module [function]
 * @source none: WebAssembly's own interface
 * @example
 * compileModule('no module')() // => null
 */
export function compileModule(base64: string): () => object | null {
  let compiled: object | null | undefined;
  return () => {
    if (compiled !== undefined) return compiled;
    const host = webAssemblyHost();
    try {
      compiled = host === undefined ? null : new host.Module(bytesOfBase64(base64));
    } catch {
      // a page's policy or a machine without 128-bit SIMD refuses it: the twin gives the same result, later
      compiled = null;
    }
    return compiled;
  };
}

/**
 * A module at work in a memory of its own.
 *
 * @param module - the module [record], from `compileModule`, or null
 * @param bytes - size of the memory [bytes], rounded up to whole pages
 * @returns what the module exports, and the memory [record]; undefined where there is no module
 * @source none: WebAssembly's own interface
 * @example
 * instanceOf(null, 8) // => undefined
 */
export function instanceOf<Routines>(
  module: object | null,
  bytes: number,
): { readonly exports: Routines; readonly buffer: ArrayBuffer } | undefined {
  const host = webAssemblyHost();
  if (module === null || host === undefined) return undefined;
  const memory = new host.Memory({ initial: Math.ceil(bytes / PAGE) });
  const { exports } = new host.Instance(module, { env: { memory } });
  return { exports: exports as Routines, buffer: memory.buffer };
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 text. */
export function bytesOfBase64(text: string): Uint8Array {
  const digits = text.replace(/=+$/u, '');
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const digit of digits) {
    held = ((held << 6) | DIGITS.indexOf(digit)) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at] = (held >> bits) & 0xff;
      at += 1;
    }
  }
  return bytes;
}

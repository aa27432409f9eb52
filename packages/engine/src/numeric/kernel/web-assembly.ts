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
export function webAssemblyHost(): WebAssemblyHost | undefined {
  return (globalThis as { WebAssembly?: WebAssemblyHost }).WebAssembly;
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

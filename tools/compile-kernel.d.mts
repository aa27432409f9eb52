/** Path, from the repository's folder, of the module that carries the bytes. */
export const MODULE: string;

/** Compiles the heat kernel from its AssemblyScript source to the bytes of a WebAssembly module. */
export function compileKernel(): Promise<Uint8Array>;

/** The module's text for the bytes given. */
export function kernelModule(bytes: Uint8Array): string;

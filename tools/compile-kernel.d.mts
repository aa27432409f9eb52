/** A kernel: its paths from the repository's folder. */
export interface Kernel {
  readonly name: string;
  readonly source: string;
  /** The module that carries the bytes. */
  readonly module: string;
  readonly constant: string;
}

/** The kernels of the engine. */
export const KERNELS: readonly Kernel[];

/** The text of a kernel's module, compiled from its AssemblyScript source. */
export function kernelModule(kernel: Kernel): Promise<string>;

import type { Plugin } from 'vite';

/** A step of the bundler that plants the error of FURROW_MUTANT in one source; none while it is not set. */
export function plantMutant(): Plugin;

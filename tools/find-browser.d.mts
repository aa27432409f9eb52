/** Path of a Chromium to drive, from FURROW_CHROMIUM or the usual places; undefined when there is none. */
export function findBrowser(
  env?: Readonly<Record<string, string | undefined>>,
  platform?: string,
): string | undefined;

/** Flags to start it with under test; those of root are included when the process is root's. */
export function launchFlags(isRoot?: boolean): string[];

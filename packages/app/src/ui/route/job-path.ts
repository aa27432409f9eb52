/** Address of a saved job. */
export function jobPath(id: string): string {
  return `/jobs/${encodeURIComponent(id)}`;
}

/** Address of a demo job. */
export function demoPath(name: string): string {
  return `/demo/${encodeURIComponent(name)}`;
}

/** What the exit code tells a calling program. */
export const EXIT = { plan: 0, badInput: 2, refusal: 3 } as const;

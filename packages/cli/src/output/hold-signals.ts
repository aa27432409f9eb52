const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Lets work that takes an instant end before Ctrl-C or a stop signal ends the program. */
export function holdSignals<Result>(work: () => Result): Result {
  let came: NodeJS.Signals | undefined;
  const hold = (signal: NodeJS.Signals): void => {
    came = signal;
  };
  for (const signal of SIGNALS) process.on(signal, hold);
  try {
    return work();
  } finally {
    // what came meanwhile is told between this turn of the event loop and the next
    setImmediate(() =>
      setImmediate(() => {
        for (const signal of SIGNALS) process.off(signal, hold);
        if (came !== undefined) process.kill(process.pid, came);
      }),
    );
  }
}

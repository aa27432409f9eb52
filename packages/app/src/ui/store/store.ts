/** A value that changes over time and tells those who listen. */
export interface Store<State> {
  readonly get: () => State;
  readonly set: (change: Partial<State>) => void;
  /** Calls back after each change until the returned function is called. */
  readonly listen: (listener: () => void) => () => void;
}

/** Makes a store with a first value. */
export function createStore<State extends object>(first: State): Store<State> {
  let state = first;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      state = { ...state, ...change };
      for (const listener of [...listeners]) listener();
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export { createStore, type Store } from './store.ts';
export { useSelected } from './use-selected.ts';

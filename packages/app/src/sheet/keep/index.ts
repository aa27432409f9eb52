export { type Draft, draftOf, dropDraft, keepDraft } from './draft.ts';
export { type Keep, keepContent, type Merged } from './keep.ts';
export { keepSheet, openedSheet } from './keep-sheet.ts';
export { type KeepState, openedState } from './keep-state.ts';
export { isUnsaved, type KeptSheetState, openText, saveWords } from './keep-text.ts';
export { type KeptReadState, type KeptSheet, type KeptSheetTools, openKeptSheet } from './kept-sheet.ts';
export { SavedMeanwhile } from './saved-meanwhile.tsx';
export { useLeaveGuard } from './use-leave-guard.ts';

export { SHEET_TITLES, type Sheet } from './sheet.ts';
export { SheetContext, useSheet, useSheetState } from './sheet-context.ts';
export { UndoButton } from './undo-button.tsx';

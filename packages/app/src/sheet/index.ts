export type { Sheet, SheetState } from './sheet.ts';
export { SheetContext, useSheet, useSheetState } from './sheet-context.ts';

export type { Sheet } from './sheet.ts';
export { SheetContext, useSheet, useSheetState } from './sheet-context.ts';

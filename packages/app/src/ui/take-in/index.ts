export { ChooseFile } from './choose-file.tsx';
export { ColumnsTable, type ColumnUse } from './columns-table.tsx';
export { OpenFileButton } from './open-file-button.tsx';

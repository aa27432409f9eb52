export { AnyReader } from './any-reader.ts';
export { COLUMN_QUANTITIES, type ColumnQuantity } from './column-name.ts';
export type { Dialect } from './dialect.ts';
export { ENCODINGS, type Encoding, markLength, textOf } from './encoding.ts';
export { CLOCK_COUNTS, type GivenClock, zoneOf, zoneWord } from './given-clock.ts';
export type { GivenColumn, TableColumn } from './guess-columns.ts';
export type { GuessedDialect } from './guess-dialect.ts';
export { JsonLinesReader } from './json-lines-reader.ts';
export {
  LOGGER_TEXT_MOST,
  loggerJsonSchema,
  type ReadLogger,
  readLogger,
  writeLogger,
} from './logger-description.ts';
export type { NumberMarks } from './number-cell.ts';
export { openParquet, type ParquetFile, type ParquetTable } from './parquet-table.ts';
export type { UnreadCells } from './planned-column.ts';
export { TableReader } from './table-reader.ts';
export {
  type Choice,
  type ChoiceAbout,
  type GivenReading,
  guessDialectOf,
  guessTable,
  type TableReading,
} from './table-reading.ts';
export type {
  RejectedLine,
  TableBatch,
  TableEnd,
  TableReaderOptions,
  TableSource,
} from './table-source.ts';

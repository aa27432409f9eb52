export { type DefaultUsed, type DocumentPath, pathText } from './complete.ts';
export { type DocumentDifference, documentDifference } from './difference.ts';
export { type DocumentField, documentFields } from './document-fields.ts';
export { documentJsonSchema, type JsonSchema } from './document-json-schema.ts';
export type { DocumentKind } from './document-kind.ts';
export { amount, described, type FieldFacts, type IssueParams } from './field.ts';
export { DOCUMENT_TEXT_MOST } from './parse-text.ts';
export { count, text } from './plain-fields.ts';
export { type CombinationIssue, readDocument } from './read-document.ts';

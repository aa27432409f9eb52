export { boxUnit, isBareNumber } from './box-unit.ts';
export { FieldEntry, useFieldIssue } from './field-entry.tsx';
export { fieldId } from './field-id.ts';
export { FieldIssue } from './field-issue.tsx';
export { FormView } from './form-view.tsx';
export { GroupForm } from './group-form.tsx';
export { acceptedText, besideField } from './issue-text.ts';
export { typedValue } from './typed-value.ts';

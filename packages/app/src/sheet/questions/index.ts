export { AmountEntry } from './amount-entry.tsx';
export { Choices, Question, QuestionForm, Wrong } from './question.tsx';
export { withoutEmpty } from './without-empty.ts';

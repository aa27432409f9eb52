export { type Advice, type Answer, type AnswerInputs, answerJob } from './answer.ts';

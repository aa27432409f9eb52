export { type Answer, type AnswerInputs, answerJob } from './answer.ts';

import { config } from 'zod';
import { answerText } from './answer-text.ts';
import type { PlanRequest } from './message.ts';

// the page's policy forbids code made from text
config({ jitless: true });

self.addEventListener('message', (event: MessageEvent<PlanRequest>) => {
  self.postMessage(answerText(event.data));
});

import { config } from 'zod';
import type { KnowledgeRequest } from './knowledge-message.ts';
import { knowledgeReply } from './knowledge-run.ts';

// the page's policy forbids code made from text
config({ jitless: true });

self.addEventListener('message', (event: MessageEvent<KnowledgeRequest>) => {
  self.postMessage(knowledgeReply(event.data));
});

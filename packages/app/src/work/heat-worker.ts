import { answerHeat, type HeatAnswer } from '@furrow/engine';
import { config } from 'zod';
import type { HeatCommand } from './heat-message.ts';
import { heatRun } from './heat-run.ts';

// the page's policy forbids code made from text
config({ jitless: true });

const run = heatRun({
  solve: answerHeat,
  reply: (reply) => self.postMessage(reply, { transfer: reply.is === 'answer' ? buffersOf(reply.heat) : [] }),
  pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
  now: () => performance.now(),
});

self.addEventListener('message', (event: MessageEvent<HeatCommand>) => {
  void run(event.data);
});

/** The field's memory, handed over instead of copied. */
function buffersOf({ field }: HeatAnswer): ArrayBuffer[] {
  const lists = [
    field.across,
    field.below,
    ...field.frames.flatMap(({ temperature, floor }) => [temperature, floor]),
  ];
  return [...new Set(lists.map(({ buffer }) => buffer))].filter((buffer) => buffer instanceof ArrayBuffer);
}

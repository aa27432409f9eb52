import { z } from 'zod';
import { amount } from '../document/index.ts';

const quickest = (step: string) =>
  amount(
    'share',
    { least: 0.05, most: 1 },
    { title: 'At least', help: `Shortest time of ${step}, as a share of the usual one.` },
  ).optional();

const slowest = (step: string) =>
  amount(
    'share',
    { least: 1, most: 20 },
    { title: 'At most', help: `Longest time of ${step}, as a share of the usual one.` },
  ).optional();

const band = (step: string) => z.strictObject({ least: quickest(step), most: slowest(step) });

/** How far each duration may fall short of its usual value or go beyond it. */
export const spread = z.strictObject({
  least: amount(
    'share',
    { least: 0.05, most: 1 },
    {
      title: 'At least',
      help: 'Shortest that a step takes, as a share of its usual time, where nothing is stated for it below.',
      fallback: { text: '80 %', why: 'judgement, no source; the shop’s own records should replace it' },
    },
  ),
  most: amount(
    'share',
    { least: 1, most: 20 },
    {
      title: 'At most',
      help: 'Longest that a step takes, as a share of its usual time, where nothing is stated for it below.',
      fallback: {
        text: '150 %',
        why: 'work takes longer more often than shorter (judgement, no source)',
      },
    },
  ),
  set_up: band('set-up'),
  commissioning: band('commissioning'),
  handling: band('starts, returns, changes and gauging'),
  cooling: band('cooling waits'),
  cleaning: band('cleaning'),
  grinding: band('grinding'),
  inspection: band('inspection'),
  refill: band('refill welding'),
});

import { z } from 'zod';
import { amount } from '../document/index.ts';

const quickest = (step: string) =>
  amount(
    'share',
    { least: 0.05, most: 1 },
    { title: `${step}, at least`, help: 'Shortest it takes, as a share of the usual time.' },
  ).optional();

const slowest = (step: string) =>
  amount(
    'share',
    { least: 1, most: 20 },
    { title: `${step}, at most`, help: 'Longest it takes, as a share of the usual time.' },
  ).optional();

const band = (step: string) => z.strictObject({ least: quickest(step), most: slowest(step) });

/** How far each duration may fall short of its usual value or go beyond it. */
export const spread = z.strictObject({
  least: amount(
    'share',
    { least: 0.05, most: 1 },
    {
      title: 'Any step, at least',
      help: 'Shortest that a step takes, as a share of its usual time, where nothing is stated for it below.',
      fallback: { text: '80 %', why: 'judgement, no source; the shop’s own records should replace it' },
    },
  ),
  most: amount(
    'share',
    { least: 1, most: 20 },
    {
      title: 'Any step, at most',
      help: 'Longest that a step takes, as a share of its usual time, where nothing is stated for it below.',
      fallback: {
        text: '150 %',
        why: 'work takes longer more often than shorter (judgement, no source)',
      },
    },
  ),
  set_up: band('Set-up'),
  commissioning: band('Commissioning'),
  handling: band('Starts, returns, changes and gauging'),
  cooling: band('Cooling waits'),
  cleaning: band('Cleaning'),
  grinding: band('Grinding'),
  inspection: band('Inspection'),
  refill: band('Refill welding'),
});

import { z } from 'zod';
import { described, type FieldFacts, type IssueParams } from '../document/index.ts';

/** Bounds of a rate at which work is done, and what one of zero would mean. */
interface RateFacts extends FieldFacts {
  /** Least accepted rate, above 0 [see title]. */
  readonly least: number;
  /** Greatest accepted rate [see title]. */
  readonly most: number;
  /** Unit as people say it, such as kg/h. */
  readonly unit: string;
  /** What a rate of zero would mean, in the shop's words. */
  readonly never: string;
}

/** A field for a rate at which work is done: one of zero would never end, and the message says so. */
export function rate({ least, most, unit, never, ...facts }: RateFacts): z.ZodNumber {
  const accepted = `${least} to ${most} ${unit}`;
  return described(
    z.number().superRefine((value, context) => {
      if (value >= least && value <= most) return;
      const params: IssueParams = {
        read: String(value),
        accepted,
        nearest: String(value < least ? least : most),
      };
      const why = value <= 0 ? never : `${value} ${unit} is outside what is accepted here, ${accepted}.`;
      context.addIssue({ code: 'custom', message: `${facts.title}: ${why}`, params: { ...params } });
    }),
    facts,
  );
}

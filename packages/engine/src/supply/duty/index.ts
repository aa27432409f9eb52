export type { DutyInterval } from './duty-interval.ts';
export { passDuty } from './pass-duty.ts';

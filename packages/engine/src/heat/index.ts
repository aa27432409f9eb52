export type { HeatField, HeatFrame } from './field.ts';

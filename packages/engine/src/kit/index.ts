export { airOfKit, hosesOfKit } from './air-of-kit.ts';
export { boreText } from './bore-text.ts';
export { kitDifference } from './difference.ts';
export { type ElectricOfKit, electricOfKit } from './electric-of-kit.ts';
export { type KitField, kitFields, kitJsonSchema } from './kit-fields.ts';
export type { Kit } from './kit-schema.ts';
export { type ChosenPolarity, polarityOf } from './polarity.ts';
export { KIT_TEXT_MOST, type ReadKit, readKit } from './read-kit.ts';
export { type LaidLoad, stationTaskOfKit } from './station-of-kit.ts';

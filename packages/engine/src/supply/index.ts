/** Supply: will the power, the leads and the air carry a plan, and where everything stands. */
export * from './air/index.ts';
export * from './duty/index.ts';
export * from './electric/index.ts';
export * from './place/index.ts';

export * from './drawing/index.ts';

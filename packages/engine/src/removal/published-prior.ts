import type { RowFit } from './fit-prior.ts';

/**
 * Prior of the removal law, fitted to the operating rows of published/process.json (all from memory).
 * Written by `npm run fit`; a test in published/ proves it fresh.
 */
export const PUBLISHED_PRIOR: RowFit = {
  depth: {
    mean: [-0.8567520332696932, 1.391101170671209, 0.05000000000000001],
    precision: [
      [12.01, 3.723667692189933, 0],
      [3.723667692189933, 3.963877026211377, 0],
      [0, 0, 5.3],
    ],
    shape: 7,
    scale: 0.42607810171983174,
  },
  extraWidth: {
    mean: [0.0034599999999999995],
    precision: [[5]],
    shape: 3,
    scale: 0.0000037459999999999994,
  },
  wear: {
    mean: [-22.08560640800189],
    precision: [[9]],
    shape: 5,
    scale: 0.20865350467925617,
  },
};

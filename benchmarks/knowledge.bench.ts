/** Learning from a shop's history, as a ratio: twice the readings against once, and a long history against a short one. */
import { learnFrom, metalOf, type ShopObservation } from '@furrow/engine';
import { machineLine, timed, unrestNote } from './timing.ts';

const CALLS = 9;

/** A history without randomness: depths run through a fixed pattern about the law. */
function history(jobs: number, stations: number): ShopObservation[] {
  const meltingEnergy = metalOf('carbon_steel').meltingEnergy.value;
  return Array.from(
    { length: jobs },
    (_, job): ShopObservation => ({
      id: `job-${job}`,
      kind: 'job',
      date: '2026-01-01',
      family: { metal: 'carbon_steel', position: 'flat', electrode: 'jointed', band: 'middle' },
      meltingEnergy,
      gaugeSd: 0.3e-3,
      passes: [0, 1].map((pass) => ({
        setting: {
          diameter: 0.0127,
          current: 800 + ((37 * job + 11 * pass) % 150),
          voltage: 42,
          travel: 0.012 + 0.001 * ((5 * job + pass) % 6),
          pushAngle: Math.PI / 4,
        },
        stations: Array.from({ length: stations }, (__, i) => ({
          at: 0.2 * i,
          depth: 0.0095 + 0.0009 * Math.sin(7 * job + 3 * pass + 1.7 * i),
        })),
      })),
    }),
  );
}

const learning = (observations: readonly ShopObservation[]) =>
  timed(CALLS, () => learnFrom({ shop: 'yard', id: '', observations }));

const short = learning(history(10, 6));
const long = learning(history(100, 6));
const dense = learning(history(100, 15));

console.log(machineLine());
console.log(
  `120 readings ${(1000 * short.median).toFixed(1)} ms, 1200 readings ${(1000 * long.median).toFixed(1)} ms (x${(long.median / short.median).toFixed(1)} for x10 entries)${unrestNote(short, long)}`,
);
console.log(
  `3000 readings ${(1000 * dense.median).toFixed(1)} ms (x${(dense.median / long.median).toFixed(1)} for x2.5 readings; aim: 100 ms)${unrestNote(long, dense)}`,
);

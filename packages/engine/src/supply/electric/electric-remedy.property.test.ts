import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Job } from '../../job/index.ts';
import type { Candidate, Limit } from '../../limit/index.ts';
import { sentenceText } from '../../quantity/index.ts';
import { type ElectricKit, electricLimits } from './electric-limits.ts';
import { BACK, OUT, SOURCE } from './kit.test-support.ts';

const job = { rates: { start_time: 60, return_travel: 0.05 } } as Job;
const PASSES = { voltage: 42, passLength: 3, travel: 0.012, tracks: 2, layers: 2 };

function limitsOf(kit: ElectricKit, current: number): readonly Limit[] {
  const outcome = electricLimits(kit);
  if (!outcome.ok) throw new Error('the kit is refused');
  return outcome.value({ ...PASSES, current } as Candidate, job);
}

/** Does in the kit what a remedy says; undefined where this reader does not know it. */
function done(kit: ElectricKit, current: number, says: string): readonly Limit[] | undefined {
  const laid = /^lay the lead "(.+)" as (\d+) x (\d+) mm2$/u.exec(says);
  if (laid !== null) {
    const [, name, parallels, area] = laid;
    const leads = kit.leads.map((lead) =>
      lead.name === name ? { ...lead, parallels: Number(parallels), area: Number(area) * 1e-6 } : lead,
    );
    return limitsOf({ ...kit, leads }, current);
  }
  const less = /^run at no more than (\d+) A$/u.exec(says);
  if (less !== null) return limitsOf(kit, Number(less[1]));
  const minutes = /^no more than ([\d.]+) minutes of arc in any ten$/u.exec(says);
  if (minutes !== null) {
    const arc = 60 * Number(minutes[1]);
    const spell = [
      { arc: true, duration: arc },
      { arc: false, duration: 600 - arc },
    ];
    return limitsOf({ ...kit, duty: () => [1, 2, 3, 4, 5, 6].flatMap(() => spell) }, current);
  }
  if (says === 'another source like "red" beside it')
    return limitsOf({ ...kit, sources: [...kit.sources, ...kit.sources] }, current);
  return undefined;
}

it('names only changes that mend the limit and make no hard one fail', () => {
  let tried = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 500, max: 1800 }),
      fc.integer({ min: 3, max: 60 }),
      fc.constantFrom(35, 50, 70, 95),
      fc.constantFrom(1, 2),
      fc.double({ min: 0.015, max: 0.04, noNaN: true }),
      (current, length, mm2, parallels, slope) => {
        const lead = { area: mm2 * 1e-6, parallels, length, insulation_limit: 358.15 };
        const characteristic = { kind: 'drooping', no_load_voltage: 80, slope } as const;
        const kit: ElectricKit = {
          sources: [{ source: { ...SOURCE, characteristic } }],
          leads: [
            { ...OUT, ...lead },
            { ...BACK, ...lead },
          ],
          ambient: 303.15,
        };
        const now = limitsOf(kit, current);
        const failing = new Set(now.filter(({ verdict }) => verdict === 'fails').map(({ id }) => id));
        for (const { id, remedy } of now.filter(({ verdict }) => verdict === 'fails')) {
          for (const says of sentenceText(remedy, 'metric').split(/, or |: /u)) {
            const after = done(kit, current, says);
            if (after === undefined) continue;
            tried += 1;
            expect(after.find((limit) => limit.id === id)?.verdict ?? 'gone', says).toMatch(/holds|tight/u);
            const broken = after.filter(({ verdict, hard }) => hard && verdict === 'fails');
            expect(
              broken.every((limit) => failing.has(limit.id)),
              says,
            ).toBe(true);
          }
        }
      },
    ),
    { seed: 1512, numRuns: 15 },
  );
  expect(tried).toBeGreaterThan(15);
});

it('says that it found none where nothing tried does', () => {
  const thin = { ...OUT, area: 16e-6, parallels: 1, length: 90, insulation_limit: 358.15 };
  const kit = { sources: [{ source: SOURCE }], leads: [thin, { ...thin, name: 'back' }], ambient: 303.15 };
  const failing = limitsOf(kit, 2400).filter(({ verdict }) => verdict === 'fails');
  expect(failing.map(({ remedy }) => remedy).join()).toMatch(
    /^found no single change of conductors side by side/u,
  );
});

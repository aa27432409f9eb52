const QUANTITY = ['packages/engine/src/quantity', 'packages/papers/src/document'];
const LIMIT = ['packages/engine/src/limit', 'packages/papers/src/document'];

/**
 * Errors planted one at a time between a computed number and its reader, and the tests that ought to notice: a unit ten times
 * off, a comparison the other way round, the wrong end of a range. `find` stands in the file exactly once.
 */
export const MUTANTS = [
  {
    what: 'kPa on every paper a tenth',
    file: 'packages/engine/src/quantity/stated-unit.ts',
    find: "kPa: { kind: 'pressure', perSi: [1, 1e3] }",
    plant: "kPa: { kind: 'pressure', perSi: [1, 1e4] }",
    tests: QUANTITY,
  },
  {
    what: 'joint millivolts a tenth',
    file: 'packages/engine/src/quantity/stated-unit.ts',
    find: "mV: { kind: 'voltage', perSi: [1e3, 1] }",
    plant: "mV: { kind: 'voltage', perSi: [1e2, 1] }",
    tests: QUANTITY,
  },
  {
    what: 'Celsius read off as kelvin',
    file: 'packages/engine/src/quantity/stated-unit.ts',
    find: 'offset: 273.15',
    plant: 'offset: 0',
    tests: QUANTITY,
  },
  {
    what: 'the inch of a gauge reading ten times off',
    file: 'packages/engine/src/quantity/format-length.ts',
    find: '(metres / INCH).toFixed(2)',
    plant: '(metres / INCH / 10).toFixed(2)',
    tests: QUANTITY,
  },
  {
    what: 'sizes below a quarter inch in thirty-seconds',
    file: 'packages/engine/src/quantity/format-length.ts',
    find: 'fraction(Math.round(size * 64), 64)',
    plant: 'fraction(Math.round(size * 32), 32)',
    tests: QUANTITY,
  },
  {
    what: 'a share rounded up to certainty',
    file: 'packages/engine/src/quantity/format-amount.ts',
    find: 'if (percent > 99 && percent < 100)',
    plant: 'if (percent > 99 && percent < 99)',
    tests: QUANTITY,
  },
  {
    what: 'a band of one end twice',
    file: 'packages/engine/src/quantity/format-amount.ts',
    find: '? first.slice(0, -tail.length) : first',
    plant: '? first.slice(0, -tail.length) : last',
    tests: [...QUANTITY, 'tools/doc-comments.test.ts'],
  },
  {
    what: 'two amounts held against each other read the same',
    file: 'packages/engine/src/quantity/format-amount.ts',
    find: 'if (one !== other) return',
    plant: 'if (one === other) return',
    tests: QUANTITY,
  },
  {
    what: 'an amount in a sentence in the other units',
    file: 'packages/engine/src/quantity/sentence.ts',
    find: 'formatAmount(part.value, part.kind, system)',
    plant: "formatAmount(part.value, part.kind, system === 'inch' ? 'metric' : 'inch')",
    tests: QUANTITY,
  },
  {
    what: 'a limit that fails is said to hold',
    file: 'packages/engine/src/limit/limit-of.ts',
    find: "sense === 'most' ? capacity - demand : demand - capacity",
    plant: "sense === 'most' ? demand - capacity : capacity - demand",
    tests: LIMIT,
  },
  {
    what: 'a limit is tight only at its very end',
    file: 'packages/engine/src/limit/limit-of.ts',
    find: 'const TIGHT_SHARE = 0.95',
    plant: 'const TIGHT_SHARE = 0.9999',
    tests: LIMIT,
  },
];

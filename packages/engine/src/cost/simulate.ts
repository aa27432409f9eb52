import { type DrawStream, drawStream } from '../numeric/index.ts';

/**
 * Runs a model over and over with seeded draws, and keeps what it gives by column.
 *
 * The same seed gives the same columns, to the last bit. A model that always takes the same number of draws can be
 * compared with a changed one draw by draw.
 *
 * @param trials - how often it is run [-], a whole number >= 1
 * @param seed - the seed [-], a whole number from 0 to 2^31 - 1
 * @param columns - how many values it gives [-], a whole number >= 1
 * @param model - writes the values of one trial into the row [record], draws from the stream only
 * @returns one sample per value, in the order of the trials [list]
 * @source JCGM 101:2008: propagation of distributions
 * @example
 * simulate(3, 1, 1, (stream, row) => { row[0] = stream.uniform() < 1 ? 2 : 0; })[0].join(' ') // => "2 2 2"
 */
export function simulate(
  trials: number,
  seed: number,
  columns: number,
  model: (stream: DrawStream, row: Float64Array) => void,
): readonly Float64Array[] {
  const stream = drawStream(seed);
  const row = new Float64Array(columns);
  const samples = Array.from({ length: columns }, () => new Float64Array(trials));
  for (let trial = 0; trial < trials; trial += 1) {
    row.fill(0);
    model(stream, row);
    for (let column = 0; column < columns; column += 1) samples[column]![trial] = row[column]!;
  }
  return samples;
}

/** A measured quantity with its expanded uncertainty (95 %), in SI; or why there is none. */
export type Measured =
  | {
      /** Best estimate [SI unit of the quantity]. */
      readonly value: number;
      /** Half of its 95 % interval [SI unit of the quantity]. */
      readonly u95: number;
    }
  | {
      /** Why it cannot be told, in words. */
      readonly declined: string;
    };

/** Quantile of the normal distribution at 97.5 % [-]. */
const NORMAL = 1.959964;

/** Coverage factor of a 95 % interval: Student's t, by its expansion about the normal; degrees of freedom from 3 up. */
function coverageFactor(degrees: number): number {
  const z = NORMAL;
  const n = Math.max(3, degrees);
  return (
    z +
    (z ** 3 + z) / (4 * n) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * n ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * n ** 3)
  );
}

/** A quantity from its standard uncertainty and the degrees of freedom of that; left out: very many. */
export function measured(value: number, u: number, degrees = Number.POSITIVE_INFINITY): Measured {
  return { value, u95: coverageFactor(degrees) * u };
}

/** Degrees of freedom of a sum of variances (Welch and Satterthwaite). */
export function degreesOf(parts: readonly { readonly variance: number; readonly degrees: number }[]): number {
  const total = parts.reduce((sum, { variance }) => sum + variance, 0);
  const weighed = parts.reduce((sum, { variance, degrees }) => sum + variance ** 2 / degrees, 0);
  return weighed > 0 ? total ** 2 / weighed : Number.POSITIVE_INFINITY;
}

/** A quantity that cannot be told, and why. */
export function declined(reason: string): Measured {
  return { declined: reason };
}

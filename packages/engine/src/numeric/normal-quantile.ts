/** Coefficients of a polynomial of the seventh degree, the constant first. */
type Eight = readonly [number, number, number, number, number, number, number, number];

const CENTRE_NUMERATOR: Eight = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
const CENTRE_DENOMINATOR: Eight = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852546,
];
const MIDDLE_NUMERATOR: Eight = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
const MIDDLE_DENOMINATOR: Eight = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
const FAR_NUMERATOR: Eight = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
];
const FAR_DENOMINATOR: Eight = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
];

function polynomial(coefficients: Eight, x: number): number {
  // Eight written out: this is called so often, and before anything is compiled, that the loop would cost more than the sum.
  const c = coefficients;
  return ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0];
}

/**
 * Quantile of the standard normal distribution, to about 16 digits.
 *
 * @param share - cumulative probability [-], above 0 and below 1
 * @returns the quantile [-]
 * @source Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477-484; coefficients from memory, checked in published/
 * @example
 * normalQuantile(0.975) // => 1.95996398454
 */
export function normalQuantile(share: number): number {
  const q = share - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTRE_NUMERATOR, r)) / polynomial(CENTRE_DENOMINATOR, r);
  }
  const tail = Math.sqrt(-Math.log(q < 0 ? share : 1 - share));
  const size =
    tail <= 5
      ? polynomial(MIDDLE_NUMERATOR, tail - 1.6) / polynomial(MIDDLE_DENOMINATOR, tail - 1.6)
      : polynomial(FAR_NUMERATOR, tail - 5) / polynomial(FAR_DENOMINATOR, tail - 5);
  return q < 0 ? -size : size;
}

/** Exact temperature rises of bodies with constant properties, as Carslaw and Jaeger have them. */

/** Conductivity, diffusivity and heat per volume of the body behind most entries. */
export interface Body {
  /** [W/(m K)] */
  readonly k: number;
  /** [m2/s] */
  readonly a: number;
}

/** Error function: series near zero, continued fraction far out; good to about 1e-15. */
export function erf(x: number): number {
  return x < 0 ? -erf(-x) : x < 2.5 ? erfSeries(x) : 1 - erfcFraction(x);
}

export function erfc(x: number): number {
  return x < 2.5 ? 1 - erf(x) : erfcFraction(x);
}

function erfSeries(x: number): number {
  let term = x;
  let sum = 0;
  for (let n = 0; n < 80; n += 1) {
    sum += term / (2 * n + 1);
    term *= -(x * x) / (n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

function erfcFraction(x: number): number {
  let tail = 0;
  for (let n = 120; n > 0; n -= 1) tail = n / 2 / (x + tail);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + tail);
}

/** Half-space whose surface is stepped to 1 while it was 0. */
export function stepped({ a }: Body, x: number, t: number): number {
  return erfc(x / (2 * Math.sqrt(a * t)));
}

/** Half-space under a constant flux [W/m2]. */
export function underFlux({ k, a }: Body, flux: number, x: number, t: number): number {
  const depth = 2 * Math.sqrt(a * t);
  return (
    ((2 * flux) / k) * Math.sqrt((a * t) / Math.PI) * Math.exp(-((x / depth) ** 2)) -
    ((flux * x) / k) * erfc(x / depth)
  );
}

/** Half-space that was 0 beside surroundings of 1 with a film [W/(m2 K)]. */
export function besideFilm({ k, a }: Body, film: number, x: number, t: number): number {
  const near = x / (2 * Math.sqrt(a * t));
  const ease = (film * Math.sqrt(a * t)) / k;
  return erfc(near) - Math.exp((film * x) / k + ease ** 2) * erfc(near + ease);
}

/** Slab from -half to half that was 1, with both faces stepped to 0. */
export function quenchedSlab({ a }: Body, half: number, x: number, t: number): number {
  let sum = 0;
  for (let n = 0; n < 60; n += 1) {
    const root = ((2 * n + 1) * Math.PI) / (2 * half);
    sum += ((n % 2 === 0 ? 1 : -1) / (2 * n + 1)) * Math.exp(-root * root * a * t) * Math.cos(root * x);
  }
  return (4 / Math.PI) * sum;
}

/** Line source [J/m] on the face z = 0 of a plate with closed faces. */
export function lineOnPlate(
  { k, a }: Body,
  heat: number,
  thickness: number,
  y: number,
  z: number,
  t: number,
): number {
  let images = 0;
  for (let n = -60; n <= 60; n += 1) images += Math.exp(-((z - 2 * n * thickness) ** 2) / (4 * a * t));
  return (heat / (2 * Math.PI * k * t)) * Math.exp(-(y * y) / (4 * a * t)) * images;
}

/** Moving source whose flux is spread like a bell, a time after it was lit; along counts ahead of the source. */
export function movingBell(
  { k, a }: Body,
  source: { readonly power: number; readonly speed: number; readonly spread: number },
  along: number,
  across: number,
  below: number,
  t: number,
): number {
  const { power, speed, spread } = source;
  // with t' = s^2 the root at the beginning is gone; Simpson on an even grid of s
  const pieces = 4000;
  const end = Math.sqrt(t);
  let sum = 0;
  for (let at = 0; at <= pieces; at += 1) {
    const ago = ((end * at) / pieces) ** 2;
    const wide = 4 * a * ago + 2 * spread ** 2;
    const far =
      ((along + speed * ago) ** 2 + across ** 2) / wide +
      (ago > 0 ? below ** 2 / (4 * a * ago) : below > 0 ? 1e9 : 0);
    sum +=
      ((at === 0 || at === pieces ? 1 : at % 2 === 1 ? 4 : 2) * 2 * Math.exp(-far)) /
      (2 * a * ago + spread ** 2);
  }
  return (((power * a) / (Math.PI * k * Math.sqrt(4 * Math.PI * a))) * (sum * end)) / pieces / 3;
}

/** Moving point source on a plate with closed faces, long after it was lit; infinite thickness for a half-space. */
export function movingPoint(
  { k, a }: Body,
  source: { readonly power: number; readonly speed: number },
  thickness: number,
  along: number,
  across: number,
  below: number,
): number {
  const { power, speed } = source;
  let sum = 0;
  const most = Number.isFinite(thickness) ? 2000 : 0;
  for (let n = -most; n <= most; n += 1) {
    const far = Math.hypot(along, across, n === 0 ? below : below - 2 * n * thickness);
    sum += Math.exp((-speed * (along + far)) / (2 * a)) / far;
  }
  return (power / (2 * Math.PI * k)) * sum;
}

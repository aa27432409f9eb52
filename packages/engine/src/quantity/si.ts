/** A millimetre [m]. */
export const MM = 1e-3;

/** A millimetre per minute [m/s]. */
export const MM_PER_MIN = MM / 60;

/** An inch [m]. */
export const INCH = 0.0254;

/** A foot [m]. */
export const FOOT = 0.3048;

/** A pound per square inch [Pa]. */
export const PSI = 6894.757293168361;

/** Freezing point of water, from which degrees Celsius are counted [K]. */
export const ZERO_CELSIUS = 273.15;

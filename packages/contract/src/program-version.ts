/** Version of the program, carried by every result. */
export const PROGRAM_VERSION = '0.1.0';

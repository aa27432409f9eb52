/** The part of the library that is used here; it ships no types. */
declare module 'jstat' {
  interface Distribution {
    inv(share: number, degrees: number): number;
    cdf(value: number, degrees: number): number;
  }
  const jStat: {
    readonly studentt: Distribution;
    readonly centralF: { cdf(value: number, upper: number, lower: number): number };
  };
  // biome-ignore lint/style/noDefaultExport: the library has only a default export
  export default jStat;
}

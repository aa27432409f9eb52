/**
 * The part of unitmath used here. The self-contained bundle is imported instead of the package's main file,
 * because the main file loads itself through a patched module loader that neither a browser nor a bundler has.
 */
declare module 'unitmath/dist/UnitMath.js' {
  interface UnitValue {
    to(unit: string): UnitValue;
    readonly value: number;
  }
  interface UnitFactory {
    (value: number, unit: string): UnitValue;
    config(options: { definitions: { units: Readonly<Record<string, string>> } }): UnitFactory;
  }
  const unitMath: UnitFactory;
  // biome-ignore lint/style/noDefaultExport: the package has no named export
  export default unitMath;
}

/** What the solver needs of a metal; ThermalMetal of the material room has it. */
export interface ThermalProperties {
  /** Temperature of the first entry [K]. */
  readonly start: number;
  /** Step from one entry to the next [K]. */
  readonly step: number;
  /** Heat per volume, strictly increasing [J/m3]. */
  readonly enthalpy: Float64Array;
  /** Thermal conductivity [W/(m K)]. */
  readonly conductivity: Float64Array;
}

/** A metal's properties over an even table of enthalpy, as the inner loop reads them. */
export interface ThermalTables {
  /** Enthalpy of the first node [J/m3]. */
  readonly start: number;
  /** Nodes per enthalpy [m3/J]. */
  readonly perUnit: number;
  /** Temperature at each node [K]. */
  readonly temperature: Float64Array;
  /** Integral of the conductivity over temperature at each node [W/m]. */
  readonly potential: Float64Array;
  /** Greatest diffusivity: change of potential with enthalpy [m2/s]. */
  readonly diffusivityMost: number;
}

const NODES = 2048;

/** Turns properties over temperature into tables over enthalpy, in which melting is a flat piece like any other. */
export function thermalTables(metal: ThermalProperties, nodes = NODES): ThermalTables {
  const { enthalpy, conductivity, start, step } = metal;
  const last = enthalpy.length - 1;
  const first = enthalpy[0]!;
  const perUnit = (nodes - 1) / (enthalpy[last]! - first);
  const temperature = new Float64Array(nodes);
  const potential = new Float64Array(nodes);
  let entry = 0;
  let below = 0;
  let diffusivityMost = 0;
  for (let node = 0; node < nodes; node += 1) {
    const heat = first + node / perUnit;
    while (entry < last - 1 && enthalpy[entry + 1]! <= heat) {
      below += (step * (conductivity[entry]! + conductivity[entry + 1]!)) / 2;
      entry += 1;
    }
    const share = (heat - enthalpy[entry]!) / (enthalpy[entry + 1]! - enthalpy[entry]!);
    const bend = conductivity[entry + 1]! - conductivity[entry]!;
    temperature[node] = start + step * (entry + share);
    potential[node] = below + step * share * (conductivity[entry]! + (bend * share) / 2);
    if (node > 0)
      diffusivityMost = Math.max(diffusivityMost, (potential[node]! - potential[node - 1]!) * perUnit);
  }
  return { start: first, perUnit, temperature, potential, diffusivityMost };
}

function interpolate(table: Float64Array, place: number): number {
  const segment = Math.min(Math.max(Math.trunc(place), 0), table.length - 2);
  return table[segment]! + (table[segment + 1]! - table[segment]!) * (place - segment);
}

/** Temperature [K] of metal with so much heat [J/m3]. */
export function temperatureAt(tables: ThermalTables, enthalpy: number): number {
  return interpolate(tables.temperature, (enthalpy - tables.start) * tables.perUnit);
}

/** Place on the table, in nodes, of a temperature [K]. */
function placeOf(tables: ThermalTables, temperature: number): number {
  const { temperature: table } = tables;
  let low = 0;
  let high = table.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (table[middle]! <= temperature) low = middle;
    else high = middle;
  }
  return low + (temperature - table[low]!) / (table[high]! - table[low]!);
}

/** Heat [J/m3] of metal at a temperature [K]. */
export function enthalpyAt(tables: ThermalTables, temperature: number): number {
  return tables.start + placeOf(tables, temperature) / tables.perUnit;
}

/** Integral of the conductivity up to a temperature [W/m]. */
export function potentialAt(tables: ThermalTables, temperature: number): number {
  return interpolate(tables.potential, placeOf(tables, temperature));
}

/** Lays a table down as the straight pieces that the inner loop reads: value at place 0, change per place. */
export function layPieces(table: Float64Array, into: Float64Array, width: number, offset: number): void {
  for (let segment = 0; segment < table.length - 1; segment += 1) {
    const slope = table[segment + 1]! - table[segment]!;
    into[width * segment + offset] = table[segment]! - slope * segment;
    into[width * segment + offset + 1] = slope;
  }
}

import type { MeltingData } from '../melting-energy.ts';
import type { Provenance, SourcedAdvice, SourcedNumber } from '../sourced.ts';

/** Pole that the electrode is put on. */
export type Pole = 'electrode_positive' | 'electrode_negative';

/** How a family of metals conducts and takes up heat. */
export interface ThermalData {
  /** Heat of the solid from 20 degC [J/kg] at a temperature [K]. */
  readonly solid: (temperature: number) => number;
  /** Conductivity [W/(m K)] at a temperature [K]. */
  readonly conductivity: (temperature: number) => number;
  /** From first melt to all molten [K]. */
  readonly meltingRange: number;
  /** Specific heat of the melt [J/(kg K)]. */
  readonly liquidHeat: number;
  /** What the table rests on. */
  readonly source: readonly { readonly text: string; readonly provenance: Provenance }[];
}

/** Elements whose fume has limits of its own. */
export type FumeElement = 'Fe' | 'Mn' | 'Cr' | 'Ni';

/** Everything the bench knows of a family of metals: one file states it, and every room reads it from there. */
export interface MetalData {
  readonly title: string;
  /** Whether the removal law holds as it was fitted: its rows are of this metal, or it melts with the same energy. */
  readonly depthLawFitted: boolean;
  /** What the energy to melt it is made of. */
  readonly melting: MeltingData;
  readonly thermal: ThermalData;
  readonly polarity: SourcedAdvice;
  /** Poles for the electrode that the advice on polarity allows with direct current, the usual one first. */
  readonly poles: readonly Pole[];
  readonly electrodeType: SourcedAdvice;
  readonly cautions: readonly SourcedAdvice[];
  /** Cautions that belong to figures of heat alone. */
  readonly heatCautions: readonly SourcedAdvice[];
  /** Whether it turns to austenite and back, so that preheat, cooling time and hardness have formulas. */
  readonly hardens: boolean;
  /** Whether the prequalified table of preheats is for steels of this family. */
  readonly prequalified: boolean;
  /** Usual greatest interpass temperature [K]. */
  readonly interpassMost: SourcedNumber;
  /** Elements that every metal of the family gives off as fume. */
  readonly fumeOf: readonly FumeElement[];
  /** Elements that metals of the family may hold, unless the composition says otherwise. */
  readonly fumePossible: readonly FumeElement[];
  /** Whether copper is its base, and not only the coat of the electrode. */
  readonly copperBased: boolean;
  /** Column of the German ventilation matrix; null: it knows no such metal. */
  readonly ventilation: 'low' | 'high' | null;
}

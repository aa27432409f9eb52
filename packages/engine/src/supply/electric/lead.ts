/** A joint in a lead: lug, coupler, clamp. A joint that is not tight is a resistance. */
export interface LeadJoint {
  readonly name: string;
  /** Resistance [ohm]. */
  readonly resistance: number;
  /** `end`: its heat can leave into one lead only, as at a clamp; `middle`: into the lead on both sides. */
  readonly at: 'end' | 'middle';
  /** `run`: the whole current passes it; `conductor`: every paralleled conductor has one like it. `run` if not stated. */
  readonly carries?: 'run' | 'conductor';
}

/** How a lead is built around its copper; only what the heat has to pass counts. */
export interface LeadCovering {
  /** Across the copper [m]. */
  readonly conductor_diameter: number;
  /** Across the covering [m]. */
  readonly outside_diameter: number;
  /** Thermal resistivity of the covering [K m/W]; 5 (rubber) if not stated. */
  readonly thermal_resistivity?: number;
  /** Emissivity of the surface [-]; 0.9 (black rubber) if not stated. */
  readonly emissivity?: number;
}

/** A lead: one run of one size, with all its conductors side by side. */
export interface Lead {
  readonly name: string;
  /** `electrode`: from the source to the torch; `work`: from the workpiece back. */
  readonly side: 'electrode' | 'work';
  /** Nominal area of one conductor [m2]: a listed size. */
  readonly area: number;
  readonly metal?: 'copper' | 'tinned copper';
  /** Conductors side by side [-]; 1 if not stated. */
  readonly parallels?: number;
  /** Length of the run [m]. */
  readonly length: number;
  readonly joints?: readonly LeadJoint[];
  /** Resistance at 20 degC that the shop measured or was given, instead of the standard's [ohm/m]. */
  readonly resistance?: number;
  /** Limit of the insulation [K], where the shop knows it; 85 degC (memory) if not stated. */
  readonly insulation_limit?: number;
  readonly covering?: LeadCovering;
  /** The model knows a lead that lies clear and straight; anything else is cautioned, never computed. */
  readonly laid?: 'clear' | 'bundled' | 'coiled';
}

/** Cautions that stand on every hazard sheet in full; none is dropped because a number looks good. */
export const STANDING_CAUTIONS: readonly string[] = [
  'Noise: plug and muff for everybody in the zone.',
  'Arc rays: filter for the current, screens for others.',
  'Sparks and slag: clear, cover, watch during and after.',
  'Fume and gas: extraction first, then supplied or filtered air.',
  'Electric shock: dry gloves, whole insulation, no touching of electrode and work together, power off before touching the holder.',
  'Magnetic field: cables together, away from the body, implanted devices cleared individually.',
  'Compressed air: secured hoses, never on persons.',
  'Hot metal and flying slag: leather, no cuffs or open pockets.',
  'Confined space: permit, air test, attendant, no electrode left in the holder.',
  'Coatings, vessels and closed volumes: clean, vent, test before heat.',
  'Preheat and crack-sensitive steel: as the welding procedure or the responsible engineer says.',
  'Local rules and the licensed practitioner come first.',
];

/** Conditions that stop the run: advice to stop and ask, not an interlock. A restart needs a reason in the record. */
export const STOP_WORK: readonly string[] = [
  'Crack seen in the groove or beside it.',
  'Air pressure below the plan at the torch, or air lost with the arc on.',
  'Arc noise or sparking changes suddenly, groove turns black or lumpy (carbon deposit).',
  'Remaining wall below its limit, or depth not measurable.',
  'Preheat below the set minimum.',
  'Fire, smoke behind the plate, fire watch absent.',
  'Extraction stopped, or oxygen outside 19.5 to 23.5 %.',
  'Cable, holder or hose hot, cut or sparking.',
  'Unprotected person inside the zone.',
  'Unexpected material, coating or closed volume found.',
];

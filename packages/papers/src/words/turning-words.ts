import { formatAmount, turningOf, type UnitSystem } from '@furrow/engine';

/** How fast a shell turns under a torch that stands, in a sentence. */
export function turningWords(
  travel: number,
  diameter: number,
  roll: number | undefined,
  units: UnitSystem,
): string {
  const turning = turningOf(travel, diameter, roll);
  const rolls =
    turning.roll === undefined || roll === undefined
      ? ''
      : `; a roll of ${formatAmount(roll, 'length', units)} on the gouged surface turns at ${perMinute(turning.roll)} rev/min`;
  return (
    `At a travel of ${formatAmount(travel, 'speed', units)} the shell turns at ${perMinute(turning.shell)} rev/min, ` +
    `once in ${formatAmount(turning.turn, 'time', units)}${rolls}. Another travel turns it in proportion.`
  );
}

/** Revolutions in a minute, to three figures. */
export function perMinute(perSecond: number): string {
  return (60 * perSecond).toPrecision(3);
}

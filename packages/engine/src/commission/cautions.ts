/** Words that keep a person whole, used by more than one check. Local rules and licensed practice go first. */
export const CAUTIONS = {
  lockout:
    'Power off, locked out and tried dead by the local rules before a hand goes near leads, torch or carriage.',
  live: 'Live terminals: clip the meter on with the power off, stand clear, then switch on. Dry gloves, no bare hands.',
  arc: 'A burning arc: filter shade, ear protection, no one in the line of the jet, fire watch set. Clip the meter on with the power off and keep its leads clear of the jet.',
  air: 'Compressed air throws grit and whips a loose hose: eye and ear protection, hose checks on, jet away from people.',
  moving: 'The carriage moves: hands, leads and hoses clear of its path. Arc power off.',
} as const;

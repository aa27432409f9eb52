export { RigRound } from './rig-round.tsx';
export { RoundChooser } from './round-chooser.tsx';
export { keepRoundPlace, type RoundPlace, roundPlaceOf } from './round-memory.ts';

export { NumberPad } from './number-pad.tsx';

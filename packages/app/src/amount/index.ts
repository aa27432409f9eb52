export { shown, shownBand, shownChance, shownSize } from './shown.ts';

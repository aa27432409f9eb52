export { figures, shown, shownBand, shownChance, shownSize } from './shown.ts';

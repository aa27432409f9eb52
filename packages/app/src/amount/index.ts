export { dropText, heatText } from './part-amount.ts';
export { figures, shown, shownBand, shownChance, shownSize } from './shown.ts';

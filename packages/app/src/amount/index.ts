export { dropText, heatText } from './part-amount.ts';
export { shown, shownBand, shownChance, shownSize } from './shown.ts';

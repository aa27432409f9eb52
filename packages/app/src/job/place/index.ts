export { placeText } from './place-text.ts';

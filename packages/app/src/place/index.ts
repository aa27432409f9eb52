export { electrodeAt, placeText } from './place-text.ts';

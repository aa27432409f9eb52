export { figures } from './figures.ts';

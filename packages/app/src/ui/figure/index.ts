export { Figure } from './figure.tsx';

export { HeatPage } from './page.tsx';

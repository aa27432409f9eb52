export { HeatPage } from './heat-page.tsx';

export { SupplyPage } from './supply-page.tsx';

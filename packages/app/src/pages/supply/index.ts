export { SupplyPage } from './page.tsx';

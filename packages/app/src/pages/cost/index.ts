export { CostPage } from './page.tsx';

export { CostPage } from './cost-page.tsx';

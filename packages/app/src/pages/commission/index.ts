export { CommissionPage } from './page.tsx';

export { CommissionPage } from './commission-page.tsx';

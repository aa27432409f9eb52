export { BayPage } from './page.tsx';

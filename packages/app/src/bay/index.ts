export { BayPage } from './bay-page.tsx';

export { PapersPage } from './page.tsx';

export { PapersPage } from './papers-page.tsx';

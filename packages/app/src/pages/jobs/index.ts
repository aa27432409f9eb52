export { JobsPage } from './page.tsx';

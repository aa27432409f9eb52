export { BenchPage } from './page.tsx';

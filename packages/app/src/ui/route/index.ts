export { demoPath, jobPath } from './job-path.ts';
export { PageLink } from './page-link.tsx';
export { goTo, nameAddress, useRoute } from './use-route.ts';

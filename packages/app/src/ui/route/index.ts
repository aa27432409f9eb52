export { PageLink } from './page-link.tsx';
export { demoPath, jobPath } from './route.ts';
export { goTo, nameAddress, useRoute } from './use-route.ts';

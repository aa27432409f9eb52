export { PageLink } from './page-link.tsx';
export { jobPath } from './route.ts';
export { goTo, nameAddress, useRoute } from './use-route.ts';

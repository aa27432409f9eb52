export { PageContext, type ShownPage, usePage } from './page-context.ts';
export { SiteHeader } from './site-header.tsx';
export { Waiting } from './waiting.tsx';

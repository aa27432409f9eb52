export { JobPages, type JobRoom } from './job-pages.tsx';
export { SiteHeader } from './site-header.tsx';
export { Waiting } from './waiting.tsx';

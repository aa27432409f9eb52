export { download } from './download.ts';

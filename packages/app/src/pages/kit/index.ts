export { type KitDesk, openKitDesk } from '../../job/kit/kit-desk.ts';
export { kitSaveWords } from '../../job/kit/kit-words.ts';
export { KitLeaveGuard } from './kit-view.tsx';
export { KitPage } from './page.tsx';

export { type KitDesk, openKitDesk } from './kit-desk.ts';
export { KitPage } from './kit-page.tsx';
export { KitLeaveGuard } from './kit-view.tsx';
export { kitSaveWords } from './kit-words.ts';

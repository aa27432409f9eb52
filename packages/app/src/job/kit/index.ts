export { type KitDesk, openKitDesk } from './kit-desk.ts';
export { KitLeaveGuard } from './kit-leave-guard.tsx';
export { kitSaveWords, kitStatusWords } from './kit-words.ts';

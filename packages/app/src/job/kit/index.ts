export { type KitDesk, openKitDesk } from './kit-desk.ts';
export { kitSaveWords, kitStatusWords } from './kit-words.ts';

/** The files of runs, apart from the database so that a thread can read them without opening one. */
export { OriginalDamaged, type Originals, openOriginals } from './originals.ts';

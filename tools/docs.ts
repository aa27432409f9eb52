import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { handbookIndex, handbookPage, readHandbook } from './handbook.ts';

const root = join(import.meta.dirname, '..');
const folder = join(root, 'docs', 'handbook');
const rooms = readHandbook(root);
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'README.md'), handbookIndex(rooms));
for (const room of rooms) writeFileSync(join(folder, `${room.room}.md`), handbookPage(room));
console.log(`Wrote ${rooms.length + 1} pages into docs/handbook.`);

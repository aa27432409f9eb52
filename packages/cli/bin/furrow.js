#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/main.js', import.meta.url);
if (!existsSync(program)) {
  console.error('Furrow is not built yet. Run “npm start” once in its folder, or “npm run build”.');
  process.exit(1);
}
const { main } = await import(program.href);
process.exitCode = await main(process.argv);

import type { PaperDocument } from '../blocks/index.ts';
import { escapeMarkup } from '../drawing/index.ts';
import { blockToHtml } from './block-to-html.ts';

/** Writes a paper as one HTML page for screen and print; style comes from `/paper.css` alone. */
export function renderHtml(paper: PaperDocument): string {
  const { title, language, revision, program_version, colophon, blocks } = paper;
  return (
    `<!doctype html>\n<html lang="${escapeMarkup(language)}">\n<head>\n<meta charset="utf-8">\n` +
    `<meta name="viewport" content="width=device-width, initial-scale=1">\n` +
    `<meta name="generator" content="Furrow ${escapeMarkup(program_version)}">\n` +
    `<meta name="furrow-revision" content="${escapeMarkup(revision)}">\n` +
    `<title>${escapeMarkup(title)}</title>\n<link rel="stylesheet" href="/paper.css">\n</head>\n` +
    `<body>\n<main class="paper paper-${paper.paper}${paper.fitted ? '' : ' paper-many'}">\n${blocks.map(blockToHtml).join('\n')}\n` +
    `<footer>${escapeMarkup(colophon)}</footer>\n</main>\n</body>\n</html>\n`
  );
}

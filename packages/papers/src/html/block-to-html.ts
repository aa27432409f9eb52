import type { Figure, HeadingBlock, PaperBlock, TableBlock } from '../blocks/index.ts';
import { codeDrawing } from '../code/index.ts';
import { drawingToSvg, escapeMarkup } from '../drawing/index.ts';
import { boundUnits } from '../words/index.ts';

/** Writes a block as HTML; every text is escaped and takes its direction from its own letters. */
export function blockToHtml(block: PaperBlock): string {
  switch (block.kind) {
    case 'heading':
      return block.level === 1
        ? titleToHtml(block)
        : `<h2${block.new_page === true ? ' class="new-page"' : ''}>${escapeMarkup(block.text)}</h2>`;
    case 'paragraph':
      return `<p class="${block.tone}" dir="auto">${worded(block.text)}</p>`;
    case 'figures':
      return `<dl class="figures ${block.size}">${block.items.map(figureToHtml).join('')}</dl>`;
    case 'table':
      return tableToHtml(block);
    case 'drawing':
      return `<figure>${drawingToSvg(block.drawing)}</figure>`;
    case 'list':
      return `<ul class="${block.tone}">${block.items.map((item) => `<li dir="auto">${worded(item)}</li>`).join('')}</ul>`;
    case 'signatures':
      return `<div class="signatures">${block.roles
        .map((role) => `<p>${escapeMarkup(role)}: name, date, signature</p>`)
        .join('')}</div>`;
    case 'fields':
      return `<dl class="fields across-${block.across}">${block.items
        .map(
          ({ label, value }) =>
            `<div${value === undefined ? ' class="empty"' : ''}><dt>${escapeMarkup(label)}</dt>` +
            `<dd dir="auto">${escapeMarkup(value ?? '')}</dd></div>`,
        )
        .join('')}</dl>`;
    case 'columns':
      return `<div class="columns">${block.columns
        .map((column) => `<div>${column.blocks.map(blockToHtml).join('')}</div>`)
        .join('')}</div>`;
  }
}

function titleToHtml({ above, text, below = [], code }: HeadingBlock): string {
  const drawn = code === undefined ? undefined : codeDrawing(code.content, code.words);
  return (
    `<header class="head"><div>${above === undefined ? '' : `<p class="above">${escapeMarkup(above)}</p>`}` +
    `<h1 dir="auto">${escapeMarkup(text)}</h1>` +
    `${below.map((line, index) => `<p class="${index === 0 ? 'lead' : 'plain'}" dir="auto">${worded(line)}</p>`).join('')}</div>` +
    `${drawn === undefined ? '' : `<figure class="code">${drawingToSvg(drawn)}</figure>`}</header>`
  );
}

function figureToHtml({ label, value, unit, note }: Figure): string {
  return (
    `<div><dt>${escapeMarkup(label)}</dt><dd>${escapeMarkup(value)}` +
    `${unit === undefined ? '' : `<span class="unit"> ${escapeMarkup(unit)}</span>`}</dd>` +
    `${note === undefined ? '' : `<dd class="note">${escapeMarkup(note)}</dd>`}</div>`
  );
}

/** Letters up to which a figure stays on one line, with the interval in which it lies [-]. */
const SHORT = 18;

function tableToHtml({
  caption,
  columns,
  rows,
  hand = false,
  small = false,
  close = false,
}: TableBlock): string {
  const classes = columns.map(({ align, strong = false }, index) => {
    const isShort = rows.every((row) => (row[index] ?? '').length <= SHORT);
    return `${align}${strong ? ' strong' : ''}${(align === 'end' || index === 0) && isShort ? ' whole' : ''}`;
  });
  const head = columns.map(
    ({ title }, index) => `<th scope="col" class="${classes[index]}">${escapeMarkup(title)}</th>`,
  );
  const body = rows.map(
    (row) =>
      `<tr>${row.map((cell, index) => `<td class="${classes[index]}">${worded(cell)}</td>`).join('')}</tr>`,
  );
  const names = [
    ...(hand ? ['hand'] : []),
    ...(small ? ['small-print'] : []),
    ...(close ? ['close'] : []),
  ].join(' ');
  return (
    `<table${names === '' ? '' : ` class="${names}"`}><caption>${escapeMarkup(caption)}</caption><thead><tr>${head.join('')}</tr></thead>` +
    `<tbody>${body.join('')}</tbody></table>`
  );
}

/** A text safe to stand in the page, its units bound to their numbers. */
function worded(text: string): string {
  return escapeMarkup(boundUnits(text));
}

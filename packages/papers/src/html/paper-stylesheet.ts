import { ACCENT, INK, MARK_STYLES, type MarkStyle, SOFT_INK } from '../style/index.ts';

/** At the foot of each page of a paper of several. */
const PAGE_NUMBER =
  '@bottom-right { content: "page " counter(page) " of " counter(pages); font-size: 8pt; color: #4d5b66; }';

/** Weights of the typeface that papers are set in, on screen as in the PDF. */
export const PAPER_FACES: readonly { readonly weight: 'regular' | 'bold'; readonly path: string }[] = [
  { weight: 'regular', path: '/paper-regular.woff' },
  { weight: 'bold', path: '/paper-bold.woff' },
];

/** Style sheet of papers: light on screen as on paper, sheet size by the class of the page, sizes as in the PDF. */
export const PAPER_STYLESHEET: string = `
${PAPER_FACES.map(({ weight, path }) => `@font-face { font-family: "Furrow paper"; font-weight: ${weight === 'bold' ? 700 : 400}; src: url("${path}") format("woff"); }`).join('\n')}
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { background: #dfe4e7; font-size: 8.5pt; }
body { margin: 0; color: ${INK}; font: 1rem/1.28 "Furrow paper", "DejaVu Sans", system-ui, sans-serif; }
.paper { background: #fff; margin: 24px auto; padding: 11mm; display: flex; flex-direction: column; gap: 0.824rem; }
.paper-a4 { width: 210mm; min-height: 297mm; }
.paper-letter { width: 8.5in; min-height: 11in; }
.paper > * { margin: 0; }
header.head { display: flex; gap: 0.8rem; justify-content: space-between; align-items: flex-start; }
header.head > div { min-width: 0; flex: 1 1 auto; }
figure.code { flex: 0 0 auto; width: 20mm; }
figure.code .drawing[class] { width: 100%; shape-rendering: crispEdges; }
h1 { font-size: 2.235rem; line-height: 1.12; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 1rem; margin: 0.353rem 0; }
p { margin: 0; overflow-wrap: anywhere; }
.above { color: ${ACCENT}; font-weight: 700; }
.lead { font-size: 1.118rem; }
.small, footer { font-size: 0.942rem; color: ${SOFT_INK}; }
.figures { display: flex; flex-wrap: wrap; gap: 0.588rem 1.059rem; }
.figures > div { flex: 1 1 auto; min-width: min-content; }
.figures.big > div { flex-basis: 0; }
.figures.big > div { border-top: 2pt solid ${ACCENT}; padding-top: 0.353rem; }
.figures dt { color: ${SOFT_INK}; font-size: 0.942rem; }
.figures dd { margin: 0; font-weight: 700; line-height: 1.12; }
.figures.big dd { font-size: 2.4rem; white-space: nowrap; }
.figures.big dd.note { white-space: normal; }
.figures.plain dd { font-size: 1.471rem; }
.figures dd .unit { font-size: 50%; }
.figures dd.note { font-size: 0.942rem; font-weight: 400; color: ${SOFT_INK}; }
table { border-collapse: collapse; width: 100%; font-size: 1.235rem; font-variant-numeric: tabular-nums; }
caption { text-align: start; font-weight: 700; font-size: 1rem; padding-bottom: 0.235rem; }
th { font-weight: 400; font-size: 0.942rem; color: ${SOFT_INK}; border-bottom: 0.9pt solid ${INK}; }
td { border-bottom: 0.35pt solid #aeb8bf; }
th, td { padding: 0.165rem 0 0.165rem 0.706rem; text-align: start; vertical-align: bottom; }
th:first-child, td:first-child { padding-inline-start: 0; }
.end { text-align: end; }
td.strong { font-weight: 700; }
table.small-print { font-size: 0.942rem; }
table.close { font-size: 1.059rem; }
table.close td.strong, td.whole { white-space: nowrap; }
table.hand td { height: 6mm; border-inline-start: 0.35pt solid #aeb8bf; }
table.hand td:first-child { border-inline-start: 0; }
.fields { display: grid; gap: 0.5rem 1.6rem; margin: 0; }
.fields.across-2 { grid-template-columns: repeat(2, minmax(0, 1fr)); }
.fields.across-3 { grid-template-columns: repeat(3, minmax(0, 1fr)); }
.fields.across-4 { grid-template-columns: repeat(4, minmax(0, 1fr)); }
.fields dt { color: ${SOFT_INK}; font-size: 0.942rem; }
.fields dd { margin: 0; min-height: 5mm; border-bottom: 0.35pt solid #aeb8bf; font-size: 1.118rem; overflow-wrap: anywhere; }
.fields .empty dd { border-bottom: 0.5pt solid ${INK}; }
.columns { display: grid; grid-auto-flow: column; grid-auto-columns: minmax(0, 1fr); gap: 1.882rem; align-items: start; }
.columns > div { min-width: 0; display: flex; flex-direction: column; gap: 0.35rem; }
figure { margin: 0; }
.drawing { display: block; margin: 0 auto; width: 100%; height: auto; }
ul { list-style: none; margin: 0; padding: 0; }
li { padding-inline-start: 1.294rem; position: relative; margin-bottom: 0.176rem; overflow-wrap: anywhere; }
li::before { content: "–"; position: absolute; inset-inline-start: 0.118rem; }
ul.caution { font-size: 0.942rem; }
ul.caution li::before { content: "△"; }
.signatures { display: flex; gap: 1.9rem; padding-top: 24pt; }
.signatures p { flex: 1 1 0; border-top: 0.8pt solid ${INK}; font-size: 0.942rem; color: ${SOFT_INK}; padding-top: 0.118rem; }
footer { border-top: 0.35pt solid #aeb8bf; padding-top: 0.353rem; margin-top: auto; }
.mark { fill: none; stroke: none; }
${Object.entries(MARK_STYLES)
  .map(([role, style]) => markRules(role, style))
  .join('\n')}
@media screen and (min-width: 1150px) { .paper { zoom: 1.4; } }
@media screen and (min-width: 701px) and (max-width: 840px) { .paper { zoom: 0.84; } }
@media screen and (max-width: 700px) {
  html { font-size: 11pt; }
  .drawing[class] { width: 100%; }
  .paper { width: auto; margin: 0; }
  .columns { grid-auto-flow: row; }
  .figures { flex-wrap: wrap; }
  .figures > div { flex-basis: 30%; }
}
@page { margin: 0; }
@page a4 { size: A4; margin: 10mm 11mm; }
@page letter { size: letter; margin: 10mm 11mm; }
@page a4-many { size: A4; margin: 10mm 11mm 14mm; ${PAGE_NUMBER} }
@page letter-many { size: letter; margin: 10mm 11mm 14mm; ${PAGE_NUMBER} }
@media print {
  html { background: #fff; }
  .paper { margin: 0; padding: 0; gap: 0.588rem; }
  .paper-a4 { page: a4; width: auto; min-height: 0; }
  .paper-letter { page: letter; width: auto; min-height: 0; }
  .paper-many { padding: 0; display: table; width: 100%; min-height: 0; break-inside: auto; }
  .paper-many > * { margin-bottom: 0.588rem; }
  .paper-many > footer { display: table-footer-group; break-inside: avoid; }
  .paper-a4.paper-many { page: a4-many; min-height: 0; }
  .paper-letter.paper-many { page: letter-many; min-height: 0; }
  tr, li, figure, .figures, .fields > div, .signatures { break-inside: avoid; }
  h2, caption { break-after: avoid; }
  h2.new-page { break-before: page; }
  .mark, .figures.big > div { print-color-adjust: exact; }
}
`.trimStart();

/** Rules of one role: lines, filled shapes, dimension lines and text. */
function markRules(role: string, { stroke, width, dash, fill, text, bold }: MarkStyle): string {
  const line = [
    stroke === undefined ? '' : `stroke: ${stroke};`,
    width === undefined ? '' : `stroke-width: ${width};`,
    dash === undefined ? '' : `stroke-dasharray: ${dash.join(' ')};`,
  ].filter((rule) => rule !== '');
  return [
    ...(line.length === 0 ? [] : [`.mark-${role} { ${line.join(' ')} }`]),
    ...(fill === undefined ? [] : [`.mark-area.mark-${role} { fill: ${fill}; }`]),
    `.mark-dimension.mark-${role} polygon { fill: ${stroke ?? INK}; stroke: none; }`,
    `.mark-text.mark-${role} { fill: ${text}; stroke: none;${bold ? ' font-weight: 700;' : ''} }`,
  ].join('\n');
}

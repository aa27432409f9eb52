import { ACCENT, INK, MARK_STYLES, type MarkStyle, SOFT_INK } from '../style/index.ts';

/** Style sheet of papers: light on screen as on paper, sheet size by the class of the page. */
export const PAPER_STYLESHEET: string = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { background: #dfe4e7; }
body { margin: 0; color: ${INK}; font: 8.5pt/1.28 system-ui, "Segoe UI", "Helvetica Neue", Arial, sans-serif; }
.paper { background: #fff; margin: 24px auto; padding: 11mm; display: flex; flex-direction: column; gap: 7pt; }
.paper-a4 { width: 210mm; min-height: 297mm; }
.paper-letter { width: 8.5in; min-height: 11in; }
.paper > * { margin: 0; }
h1 { font-size: 19pt; line-height: 1.12; margin: 0; overflow-wrap: anywhere; }
h2 { font-size: 8.5pt; margin: 3pt 0; }
p { margin: 0; overflow-wrap: anywhere; }
.above { color: ${ACCENT}; font-weight: 700; }
.lead { font-size: 9.5pt; }
.small, footer { font-size: 6.5pt; color: ${SOFT_INK}; }
.figures { display: flex; gap: 9pt; }
.figures > div { flex: 1 1 auto; min-width: 0; }
.figures.big > div { border-top: 2pt solid ${ACCENT}; padding-top: 3pt; }
.figures dt { color: ${SOFT_INK}; font-size: 7.5pt; }
.figures dd { margin: 0; font-weight: 700; line-height: 1.12; }
.figures.big dd { font-size: 21pt; white-space: nowrap; }
.figures.big dd.note { white-space: normal; }
.figures.plain dd { font-size: 12.5pt; }
.figures dd .unit { font-size: 50%; }
.figures dd.note { font-size: 7.5pt; font-weight: 400; color: ${SOFT_INK}; }
table { border-collapse: collapse; width: 100%; font-size: 9pt; font-variant-numeric: tabular-nums; }
caption { text-align: start; font-weight: 700; font-size: 8.5pt; padding-bottom: 2pt; }
th { font-weight: 400; font-size: 7.5pt; color: ${SOFT_INK}; border-bottom: 0.9pt solid ${INK}; }
td { border-bottom: 0.35pt solid #aeb8bf; }
th, td { padding: 1.4pt 0 1.4pt 6pt; text-align: start; vertical-align: bottom; }
th:first-child, td:first-child { padding-inline-start: 0; }
.end { text-align: end; }
td.strong { font-weight: 700; }
.columns { display: grid; grid-auto-flow: column; grid-auto-columns: minmax(0, 1fr); gap: 16pt; align-items: start; }
.columns > div { min-width: 0; }
figure { margin: 0; }
.drawing { display: block; width: 100%; height: auto; }
ul { list-style: none; margin: 0; padding: 0; }
li { padding-inline-start: 11pt; position: relative; margin-bottom: 1.5pt; overflow-wrap: anywhere; }
li::before { content: "–"; position: absolute; inset-inline-start: 1pt; }
ul.caution { font-size: 7.6pt; }
ul.caution li::before { content: "△"; }
.signatures { display: flex; gap: 16pt; padding-top: 24pt; }
.signatures p { flex: 1 1 0; border-top: 0.8pt solid ${INK}; font-size: 7.5pt; color: ${SOFT_INK}; padding-top: 1pt; }
footer { border-top: 0.35pt solid #aeb8bf; padding-top: 3pt; margin-top: auto; }
.mark { fill: none; stroke: none; }
${Object.entries(MARK_STYLES)
  .map(([role, style]) => markRules(role, style))
  .join('\n')}
@media (max-width: 700px) {
  .paper { width: auto; margin: 0; }
  .columns { grid-auto-flow: row; }
  .figures { flex-wrap: wrap; }
  .figures > div { flex-basis: 30%; }
}
@page { margin: 0; }
@page a4 { size: A4; margin: 0; }
@page letter { size: letter; margin: 0; }
@media print {
  html { background: #fff; }
  .paper { margin: 0; padding: 10mm 11mm; gap: 5pt; break-inside: avoid; }
  .paper-a4 { page: a4; min-height: 296mm; }
  .paper-letter { page: letter; min-height: 10.95in; }
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

import type { Field, FieldsBlock } from '../blocks/index.ts';
import { INK, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';

/** Room over a line that a hand writes on [pt]; the same on a crowded page. */
const WRITING = 13;

/** Labels, each with its value or with a line to write it on. */
export function fieldsBox(fields: FieldsBlock, width: number, paint: Paint): Box {
  const rows: Field[][] = [];
  for (let from = 0; from < fields.items.length; from += fields.across)
    rows.push(fields.items.slice(from, from + fields.across));
  return rowsBox(
    rows.map((row) => rowOf(row, fields.across, width, paint)),
    paint,
  );
}

function rowOf(items: readonly Field[], across: number, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const gap = 14 * scale;
  const column = (width - gap * (across - 1)) / across;
  const cells = items.map(({ label, value }) => ({
    label: textBox(label, column, { size: 8, colour: SOFT_INK, tag: 'Span' }, paint),
    value: value === undefined ? undefined : textBox(value, column, { size: 9.5, tag: 'Span' }, paint),
  }));
  const height = Math.max(
    0,
    ...cells.map(({ label, value }) => label.height + Math.max(value?.height ?? 0, WRITING)),
  );
  return {
    height,
    paint(x, y, parent) {
      cells.forEach(({ label, value }, index) => {
        const left = x + index * (column + gap);
        const element = pdf.struct('P');
        parent.add(element);
        label.paint(left, y, element);
        value?.paint(left, y + label.height, element);
        element.end();
        pdf.markContent('Artifact', { type: 'Layout' });
        pdf.lineWidth(0.5).undash();
        pdf
          .moveTo(left, y + height)
          .lineTo(left + column, y + height)
          .stroke(value === undefined ? INK : '#aeb8bf');
        pdf.endMarkedContent();
      });
    },
  };
}

function rowsBox(rows: readonly Box[], paint: Paint): Box {
  const gap = 4 * paint.scale;
  const height = rows.reduce((sum, row) => sum + row.height + gap, 0);
  return {
    height,
    ...(rows.length > 1 && { least: rows[0]!.height + gap }),
    cut(room) {
      let fits = 0;
      for (let used = 0; fits < rows.length; fits += 1) {
        used += rows[fits]!.height + gap;
        if (used > room) break;
      }
      if (fits === 0 || fits === rows.length) return undefined;
      return { first: rowsBox(rows.slice(0, fits), paint), rest: rowsBox(rows.slice(fits), paint) };
    },
    paint(x, y, parent) {
      let top = y;
      for (const row of rows) {
        row.paint(x, top, parent);
        top += row.height + gap;
      }
    },
  };
}

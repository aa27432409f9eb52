import type { SignaturesBlock } from '../blocks/index.ts';
import { INK, SOFT_INK } from '../style/index.ts';
import type { Box, Paint } from './paint.ts';
import { textBox } from './text-box.ts';

/** Lines to sign on by hand, with room for name and date. */
export function signaturesBox(signatures: SignaturesBlock, width: number, paint: Paint): Box {
  const { pdf, scale } = paint;
  const gap = 16 * scale;
  const column = (width - gap * (signatures.roles.length - 1)) / signatures.roles.length;
  const labels = signatures.roles.map((role) =>
    textBox(`${role}: name, date, signature`, column, { size: 8, colour: SOFT_INK, tag: 'P' }, paint),
  );
  // a hand needs the same room on a crowded page
  const room = 24;
  return {
    height: room + Math.max(0, ...labels.map((label) => label.height)),
    // the sentence under them would stand alone on a page, and nobody signs a page that says nothing
    keepsWithNext: true,
    keepsWithBefore: true,
    paint(x, y, parent) {
      labels.forEach((label, index) => {
        const left = x + index * (column + gap);
        pdf.markContent('Artifact', { type: 'Layout' });
        pdf.lineWidth(0.8).undash();
        pdf
          .moveTo(left, y + room)
          .lineTo(left + column, y + room)
          .stroke(INK);
        pdf.endMarkedContent();
        label.paint(left, y + room + 1, parent);
      });
    },
  };
}

import {
  checkBlocks,
  connectionTable,
  dailyBlocks,
  type PaperDocument,
  refusalBlocks,
} from '../blocks/index.ts';
import { jobWords } from '../words/index.ts';
import { framedPaper } from './paper-frame.ts';
import type { PaperOptions, PaperSubject } from './paper-subject.ts';

/** Makes the connection and commissioning sheet: what runs from where to where, and what to read before the first arc. */
export function commissioningDocument(subject: PaperSubject, options: PaperOptions): PaperDocument {
  const { read, answer } = subject;
  const { supply } = answer;
  const { units } = options;
  return framedPaper(subject, options, {
    above: 'Connections and checks before the first arc',
    ...(supply !== undefined && { below: [`Kit: ${supply.kit.title}`, jobWords(read.job, units)] }),
    fitted: false,
    roles: ['Connected by', 'Checked by', 'Released for the arc by'],
    blocks: [
      ...(supply === undefined
        ? [
            {
              kind: 'paragraph',
              tone: 'lead',
              text: 'No kit was given, so there is nothing known to connect or to expect: state the shop’s power, leads and air, and make this paper again.',
            } as const,
          ]
        : [
            {
              kind: 'fields',
              across: 4,
              items: [
                { label: 'Date' },
                { label: 'Shift' },
                { label: 'Meters used' },
                { label: 'Meters checked on' },
              ],
            } as const,
            connectionTable(supply.connections, units),
            ...checkBlocks(supply.checks, units, subject.checked),
            ...dailyBlocks(supply.checks, units),
            ...(supply.cautions.length === 0
              ? []
              : [
                  { kind: 'heading', level: 2, text: 'Not in these numbers' } as const,
                  { kind: 'list', tone: 'caution', items: supply.cautions } as const,
                ]),
          ]),
      ...(answer.plan === undefined ? refusalBlocks(read, answer, units) : []),
    ],
  });
}

import type { CommissionRound, UnitSystem } from '@furrow/engine';
import { checkBlocks } from '../blocks/index.ts';
import { ROUND_TITLES } from '../words/index.ts';
import { blocksToText } from './block-to-text.ts';
import { GOVERNED, paragraph } from './told.ts';

/** Writes a round of checks at the rig for the terminal: what it is for, the checks, what it leaves out. */
export function renderRoundText(round: CommissionRound, title: string, units: UnitSystem): string {
  const { depth, says, checks, left_out: leftOut } = round;
  const count = checks.length === 1 ? 'one check' : `${checks.length} checks`;
  return blocksToText([
    { kind: 'heading', level: 1, text: title, below: [`${ROUND_TITLES[depth]}: ${count}`] },
    paragraph(says),
    ...checkBlocks(checks, units),
    ...(leftOut.length === 0 ? [] : [paragraph(`Left out: ${leftOut.join('; ')}.`)]),
    paragraph(GOVERNED),
  ]);
}

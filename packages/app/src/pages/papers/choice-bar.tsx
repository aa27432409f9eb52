import type { PaperChoices } from '@furrow/contract';
import type { VNode } from 'preact';

interface ChoiceBarProps {
  readonly paper: PaperChoices['paper'];
  readonly kit: PaperChoices['kit'];
  readonly onPaper: (paper: PaperChoices['paper']) => void;
  readonly onKit: (kit: PaperChoices['kit']) => void;
}

/** On which sheet, and planned with or without the shop's kit; the units are those of the whole bench. */
export function ChoiceBar({ paper, kit, onPaper, onKit }: ChoiceBarProps): VNode {
  return (
    <fieldset class="paper-choices">
      <legend class="unseen">How the papers are made</legend>
      <label>
        Sheet{' '}
        <select
          value={paper}
          onChange={(event) => onPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
        >
          <option value="a4">A4</option>
          <option value="letter">Letter</option>
        </select>
      </label>
      <label>
        Planned{' '}
        <select
          value={kit}
          onChange={(event) => onKit(event.currentTarget.value === 'none' ? 'none' : 'shop')}
        >
          <option value="shop">with the shop’s kit, if one is saved</option>
          <option value="none">without a kit</option>
        </select>
      </label>
    </fieldset>
  );
}

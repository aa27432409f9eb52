import type { PaperChoices } from '@furrow/contract';
import type { VNode } from 'preact';

interface ChoiceBarProps {
  readonly paper: PaperChoices['paper'];
  readonly kit: PaperChoices['kit'];
  readonly history: PaperChoices['history'];
  readonly onPaper: (paper: PaperChoices['paper']) => void;
  readonly onKit: (kit: PaperChoices['kit']) => void;
  readonly onHistory: (history: PaperChoices['history']) => void;
}

/** On which sheet, and planned with or without the shop’s kit and history; the units are those of the whole bench. */
export function ChoiceBar(props: ChoiceBarProps): VNode {
  const { paper, kit, history, onPaper, onKit, onHistory } = props;
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
      <label>
        Knowledge{' '}
        <select
          value={history}
          onChange={(event) => onHistory(event.currentTarget.value === 'none' ? 'none' : 'shop')}
        >
          <option value="shop">what the shop has learned</option>
          <option value="none">as a shop without history</option>
        </select>
      </label>
    </fieldset>
  );
}

import { RIG_CHANGES, ROUND_DEPTHS } from '@furrow/engine';
import { CHANGE_WORDS, ROUND_TITLES } from '@furrow/papers/words';
import type { VNode } from 'preact';
import type { RoundPlace, RoundView } from './round-memory.ts';

interface RoundChooserProps {
  readonly place: RoundPlace;
  readonly onChange: (place: RoundPlace) => void;
}

const VIEWS: readonly RoundView[] = ['list', ...ROUND_DEPTHS];

/** How the rig is checked: the whole list, or one of the rounds, and after a change what it was. */
export function RoundChooser({ place, onChange }: RoundChooserProps): VNode {
  const { view, changed } = place;
  return (
    <div class="round-chooser">
      <fieldset class="segments round-views">
        <legend>How much is checked</legend>
        {VIEWS.map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="round-view"
              checked={view === one}
              onChange={() => onChange({ view: one, changed, check: undefined })}
            />
            <span>{one === 'list' ? 'Whole list' : ROUND_TITLES[one]}</span>
          </label>
        ))}
      </fieldset>
      {view === 'change' ? (
        <fieldset class="round-changes">
          <legend>What was changed?</legend>
          {RIG_CHANGES.map((one) => (
            <label key={one}>
              <input
                type="checkbox"
                checked={changed.includes(one)}
                onChange={(event) => {
                  const others = changed.filter((each) => each !== one);
                  onChange({
                    view,
                    changed: event.currentTarget.checked ? [...others, one] : others,
                    check: undefined,
                  });
                }}
              />{' '}
              {CHANGE_WORDS[one]}
            </label>
          ))}
        </fieldset>
      ) : null}
    </div>
  );
}

import type { VNode } from 'preact';
import { useContext } from 'preact/hooks';
import { useSelected } from '../store/index.ts';
import type { Theme } from './settings.ts';
import { SettingsContext } from './settings-context.ts';

/** Switches for the units shown and for light or dark. */
export function SettingsControls(): VNode {
  const settings = useContext(SettingsContext);
  const { units, theme } = useSelected(settings, (state) => state);
  return (
    <div class="settings">
      <fieldset class="segments">
        <legend class="unseen">Units shown</legend>
        {(['metric', 'inch'] as const).map((system) => (
          <label key={system}>
            <input
              type="radio"
              name="units"
              checked={units === system}
              onChange={() => settings.set({ units: system })}
            />
            <span>{system}</span>
          </label>
        ))}
      </fieldset>
      <label class="choice">
        <span class="unseen">Theme</span>
        <select
          value={theme}
          onChange={(event) => settings.set({ theme: event.currentTarget.value as Theme })}
        >
          <option value="system">theme: system</option>
          <option value="light">theme: light</option>
          <option value="dark">theme: dark</option>
        </select>
      </label>
    </div>
  );
}

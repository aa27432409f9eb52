import type { UnitSystem } from '@furrow/engine';
import { createStore, type Store } from '../store/index.ts';

/** Light, dark, or as the system has it. */
export type Theme = 'system' | 'light' | 'dark';

/** What a person chose for this browser. */
export interface Settings {
  readonly units: UnitSystem;
  readonly theme: Theme;
}

const UNITS_KEY = 'furrow.units';
const THEME_KEY = 'furrow.theme';
const THEMES: readonly string[] = ['system', 'light', 'dark'] satisfies Theme[];

/** Reads the choices kept in this browser; whatever is not known there falls back to metric and the system. */
export function createSettings(memory: Storage): Store<Settings> {
  const theme = memory.getItem(THEME_KEY) ?? 'system';
  return createStore<Settings>({
    units: memory.getItem(UNITS_KEY) === 'inch' ? 'inch' : 'metric',
    theme: THEMES.includes(theme) ? (theme as Theme) : 'system',
  });
}

/** Keeps each change and puts the theme on the page. */
export function keepSettings(settings: Store<Settings>, memory: Storage, page: HTMLElement): void {
  const keep = (): void => {
    const { units, theme } = settings.get();
    memory.setItem(UNITS_KEY, units);
    memory.setItem(THEME_KEY, theme);
    page.dataset['theme'] = theme;
  };
  keep();
  settings.listen(keep);
}

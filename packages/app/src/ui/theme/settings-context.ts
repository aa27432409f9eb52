import type { UnitSystem } from '@furrow/engine';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { createStore, type Store, useSelected } from '../store/index.ts';
import type { Settings } from './settings.ts';

/** Hands the settings to every component. */
export const SettingsContext = createContext<Store<Settings>>(
  createStore<Settings>({ units: 'metric', theme: 'system' }),
);

/** The units in which amounts are shown. */
export function useUnits(): UnitSystem {
  return useSelected(useContext(SettingsContext), (settings) => settings.units);
}

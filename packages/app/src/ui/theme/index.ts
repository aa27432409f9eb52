export { Said } from './said.tsx';
export { createSettings, keepSettings } from './settings.ts';
export { SettingsContext, useUnits } from './settings-context.ts';
export { SettingsControls } from './settings-controls.tsx';
export { useMedia } from './use-media.ts';

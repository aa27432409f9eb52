import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import './ui/theme/theme.css';
import './ui/theme/layout.css';
import './ui/theme/control.css';
import './ui/theme/panel.css';
import './ui/theme/form.css';
import './ui/theme/drawing.css';
import './ui/theme/print.css';
import { render } from 'preact';
import { config } from 'zod';
import { keepApp } from './shell/app-update.ts';
import { SignedIn } from './shell/signed-in.tsx';
import { createSettings, keepSettings, SettingsContext } from './ui/theme/index.ts';

// the page's policy forbids code made from text
config({ jitless: true });

const page = document.getElementById('app');
if (page === null) throw new Error('the page has no place for the app');
const settings = createSettings(localStorage);
keepSettings(settings, localStorage, document.documentElement);
render(
  <SettingsContext.Provider value={settings}>
    <SignedIn />
  </SettingsContext.Provider>,
  page,
);
void keepApp();

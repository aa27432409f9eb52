import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import './theme/theme.css';
import './theme/layout.css';
import './theme/control.css';
import './theme/panel.css';
import './theme/form.css';
import './theme/drawing.css';
import './theme/supply.css';
import './theme/commission.css';
import './theme/heat.css';
import './theme/cost.css';
import './theme/hazard.css';
import './theme/papers.css';
import './theme/print.css';
import { render } from 'preact';
import { config } from 'zod';
import { App } from './app.tsx';
import { createSettings, keepSettings, SettingsContext } from './theme/index.ts';

// the page's policy forbids code made from text
config({ jitless: true });

const page = document.getElementById('app');
if (page === null) throw new Error('the page has no place for the app');
const settings = createSettings(localStorage);
keepSettings(settings, localStorage, document.documentElement);
render(
  <SettingsContext.Provider value={settings}>
    <App />
  </SettingsContext.Provider>,
  page,
);

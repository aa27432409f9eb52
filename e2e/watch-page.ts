import type { Page } from 'playwright-core';

interface Watch {
  /** Address of the bench: nothing else may be asked for anything. */
  readonly url: string;
  /** Statuses that the test brings about. */
  readonly statuses: readonly number[];
  /** What the test makes the console say. */
  readonly said: RegExp | undefined;
  readonly tell: (what: string) => void;
}

/** Tells of crashes, console errors (broken rules of the content security policy are such) and requests that leave the bench. */
export function watchPage(page: Page, { url, statuses, said, tell }: Watch): void {
  page.on('pageerror', (error) => tell(`the page threw: ${error.message}`));
  page.on('crash', () => tell('the page crashed'));
  page.on('console', (message) => {
    const kind = message.type();
    if (kind !== 'error' && kind !== 'warning') return;
    // a status is told of by the response below, where it can be told apart
    if (message.text().startsWith('Failed to load resource')) return;
    if (said?.test(message.text())) return;
    tell(`${kind} on the console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const address = request.url();
    if (/^(data|blob):/u.test(address) || new URL(address).origin === url) return;
    tell(`a request left the bench: ${address}`);
  });
  page.on('response', (response) => {
    const status = response.status();
    if (status < 400 || statuses.includes(status)) return;
    tell(`${response.request().method()} ${response.url()} answered ${status}`);
  });
}

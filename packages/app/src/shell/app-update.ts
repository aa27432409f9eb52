import { createStore } from '../ui/store/index.ts';

/** How the app stands on this device. */
export const appStanding = createStore<{
  /** Whether it opens without the server. */
  readonly kept: boolean;
  /** Whether a newer version is here than the one that is shown. */
  readonly newer: boolean;
}>({ kept: false, newer: false });

let registration: ServiceWorkerRegistration | undefined;

/** Keeps the app on this device, where the browser can. */
export async function keepApp(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const container = navigator.serviceWorker;
  let before = container.controller;
  appStanding.set({ kept: before !== null });
  container.addEventListener('controllerchange', () => {
    appStanding.set({ kept: true, newer: before !== null });
    before = container.controller;
  });
  try {
    registration = await container.register('/service-worker.js');
  } catch {
    // the app works as long as the server is reached
  }
}

/** Asks whether there is a newer version: the server may be another one since it was reached last. */
export async function askForUpdate(): Promise<void> {
  try {
    await registration?.update();
  } catch {
    // asked again the next time
  }
}

import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const LINUX_NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const MAC_PATHS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const WINDOWS_TAILS = [
  ['Chromium', 'Application', 'chrome.exe'],
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function usualPlaces(env, platform) {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean);
    return roots.flatMap((root) => WINDOWS_TAILS.map((tail) => join(root, ...tail)));
  }
  const onPath = (env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => LINUX_NAMES.map((name) => join(folder, name)));
  const inHome = env.HOME ? MAC_PATHS.map((path) => join(env.HOME, path)) : [];
  return platform === 'darwin' ? [...MAC_PATHS, ...inHome, ...onPath] : onPath;
}

/** Path of a Chromium to drive; a set FURROW_CHROMIUM is the only one considered, so that a typing error shows. */
export function findBrowser(env = process.env, platform = process.platform) {
  if (env.FURROW_CHROMIUM) return isProgram(env.FURROW_CHROMIUM) ? env.FURROW_CHROMIUM : undefined;
  return usualPlaces(env, platform).find(isProgram);
}

/** Flags for a browser under test: it stays off the network, and its sandbox is off where root could not start it. */
export function launchFlags(isRoot = process.getuid?.() === 0) {
  return [
    ...(isRoot ? ['--no-sandbox'] : []),
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ];
}

export { Accounts } from './account/accounts.ts';
export type { ProviderPlace } from './account/provider.ts';
export {
  type AccountsOpen,
  buildServer,
  type Observer,
  type OpenPlace,
  type ServerParts,
} from './build-server.ts';
export { tokenOf } from './guard/token-file.ts';
export { type RunningServer, startServer } from './start-server.ts';
export { openBackgroundWork, openWork, type Work } from './work/open-work.ts';

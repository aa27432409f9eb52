/** Folder of the repository. */
export const ROOT: string;

/** Whether a Node version such as 20.19.1 is recent enough. */
export function isNodeRecent(version: string): boolean;

/** Whether what is installed in a folder is what its lock asks for. */
export function isInstalled(root: string): boolean;

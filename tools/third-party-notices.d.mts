export function thirdPartyNotices(root: string): { text: string; unchecked: string[] };

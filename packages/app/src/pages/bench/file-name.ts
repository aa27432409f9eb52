/** A file name made of a job's title: lower case, hyphens, nothing a file system minds. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 60);
  return `${plain === '' ? 'job' : plain}.${ending}`;
}

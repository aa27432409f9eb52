/** Pages of a PDF, counted in its page tree. */
export function pdfPages(bytes: Buffer): number {
  return bytes.toString('latin1').match(/\/Type\s*\/Page(?![s\w])/gu)?.length ?? 0;
}

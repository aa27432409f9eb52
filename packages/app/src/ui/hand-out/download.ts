/** Hands a file to the person, as a download. */
export function download(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // the browser has taken the address over once the click has been worked off
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

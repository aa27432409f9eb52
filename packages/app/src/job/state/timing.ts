/** Marks that a change came in; the measurements of redrawing count from here. */
export function markEdit(): void {
  performance.mark('furrow:edit');
}

/** Marks that the section shows an edit. */
export function markSection(edit: number): void {
  performance.mark('furrow:section', { detail: edit });
}

/** Marks that the result of an edit is on the page. */
export function markPlanned(edit: number): void {
  performance.mark('furrow:planned', { detail: edit });
}

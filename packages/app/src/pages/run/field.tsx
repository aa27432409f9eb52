import type { ComponentChildren, VNode } from 'preact';

interface FieldProps {
  readonly label: string;
  readonly children: ComponentChildren;
}

/** A control under its name. */
export function Field({ label, children }: FieldProps): VNode {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the control is handed in
    <label class="live-field">
      <span>{label}</span>
      {children}
    </label>
  );
}

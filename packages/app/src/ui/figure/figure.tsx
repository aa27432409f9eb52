import type { ComponentChildren, VNode } from 'preact';

interface FigureProps {
  readonly name: string;
  /** The number with its unit. */
  readonly value: string;
  readonly note: string;
  /** What belongs to the value, such as its lock: at the figure's corner, or under it where there are several. */
  readonly children?: ComponentChildren;
  readonly several?: boolean;
}

/** One big number of a list of figures (`dl.headline`). */
export function Figure({ name, value, note, children, several = false }: FigureProps): VNode {
  const [, number = value, unit = ''] = /^(.*\d)( ?[^\d]+)$/u.exec(value) ?? [];
  return (
    <div class="figure">
      <dt>{name}</dt>
      <dd>
        <span class={`figure-value${number.length > 6 ? ' figure-long' : ''}`}>
          {number}
          <span class="figure-unit">{unit}</span>
        </span>
        <span class="figure-note">{note}</span>
        {children === undefined ? null : (
          <span class={several ? 'figure-locks-below' : 'figure-locks'}>{children}</span>
        )}
      </dd>
    </div>
  );
}

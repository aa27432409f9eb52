import type { RunReport, Written } from '@furrow/engine';
import type { VNode } from 'preact';
import type { StripView } from './use-strip-view.ts';

interface StripControlsProps {
  readonly report: Written<RunReport>;
  readonly view: StripView;
}

/** Along what the strip is drawn, which pass, and how near. */
export function StripControls({ report, view }: StripControlsProps): VNode {
  const { axis, cursor, hasPlaces } = view;
  return (
    <div class="run-strip-controls" role="toolbar" aria-label="Strip">
      <button
        type="button"
        aria-pressed={axis === 'seam'}
        disabled={!hasPlaces}
        onClick={() => view.setAxis('seam')}
      >
        Along the seam
      </button>
      <button type="button" aria-pressed={axis === 'time'} onClick={() => view.setAxis('time')}>
        Along time
      </button>
      {axis === 'seam' && report.passes.length > 1 ? (
        <label>
          Readings of{' '}
          <select
            value={String(view.pass)}
            onChange={(event) => view.setPass(Number(event.currentTarget.value))}
          >
            {report.passes.map(({ number }) => (
              <option key={number} value={String(number)}>
                pass {number}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <span class="run-strip-zoom">
        <button type="button" aria-label="Zoom in" onClick={() => view.zoom(0.5, cursor)}>
          +
        </button>
        <button type="button" aria-label="Zoom out" onClick={() => view.zoom(2, cursor)}>
          −
        </button>
        <button type="button" aria-label="Back along the strip" onClick={() => view.pan(-0.5)}>
          ←
        </button>
        <button type="button" aria-label="On along the strip" onClick={() => view.pan(0.5)}>
          →
        </button>
        <button type="button" onClick={view.whole}>
          Whole
        </button>
      </span>
    </div>
  );
}

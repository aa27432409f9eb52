import type { DocumentPath, Kit } from '@furrow/engine';
import type { VNode } from 'preact';
import type { KitDesk } from '../../job/kit/index.ts';
import { patternOf } from '../../sheet/document/index.ts';
import { FieldEntry, FieldIssue, fieldId, useFieldIssue } from '../../sheet/form/index.ts';
import { useSheetState } from '../../sheet/index.ts';
import { PageLink } from '../../ui/route/index.ts';
import { movables } from './movable.ts';

/** Stands in for a station's place that is not stated; its entries are empty all the same. */
const ORIGIN = { x_m: 0, y_m: 0 };

/** The places of the bay's points, to be typed; a station that is not stated is found. */
export function PlaceTable({ desk, kit }: { readonly desk: KitDesk; readonly kit: Kit }): VNode {
  const points = movables(kit, ORIGIN).filter(({ points: own }) => own.length === 1);
  return (
    <section class="panel" aria-labelledby="places-title">
      <header class="panel-head">
        <h2 id="places-title">Places</h2>
        <p class="caption">from the bay’s own origin</p>
      </header>
      <table class="place-table">
        <thead>
          <tr>
            <td />
            <th scope="col">Across</th>
            <th scope="col">Up</th>
          </tr>
        </thead>
        <tbody>
          {points.map(({ id, title, points: own }) => (
            <tr key={id}>
              <th scope="row">{title}</th>
              {(['x', 'y'] as const).map((name) => (
                <td key={name}>
                  <PlaceEntry
                    path={[...(own[0]?.path ?? []), name]}
                    name={`${title}, ${name === 'x' ? 'across' : 'up'}`}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {kit.bay?.station === undefined ? (
        <p class="caption">The station’s place is found; drag it to state another.</p>
      ) : (
        <p>
          <button type="button" onClick={() => desk.change([{ do: 'remove', path: ['bay', 'station'] }])}>
            Find the station’s place
          </button>
        </p>
      )}
      <p class="caption">
        Corners of the bay, of obstacles, walkways and the workpiece are typed in{' '}
        <PageLink to="/kit">the kit</PageLink>.
      </p>
    </section>
  );
}

function PlaceEntry({ path, name }: { readonly path: DocumentPath; readonly name: string }): VNode | null {
  const field = useSheetState((state) => state.file.fields.at(patternOf(path)));
  const issue = useFieldIssue(path);
  if (field === undefined) return null;
  return (
    <div class={issue === undefined ? '' : 'field-wrong'}>
      <FieldEntry
        field={field}
        path={path}
        name={name}
        describedBy={`${fieldId(path)}-issue`}
        invalid={issue !== undefined}
        brief
      />
      <FieldIssue id={`${fieldId(path)}-issue`} issue={issue} field={field} path={path} />
    </div>
  );
}

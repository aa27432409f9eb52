import type { DocumentPath, Kit } from '@furrow/engine';
import type { VNode } from 'preact';
import { patternOf } from '../document/index.ts';
import { FieldEntry, FieldIssue, fieldId, useFieldIssue } from '../form/index.ts';
import { PageLink } from '../route/index.ts';
import { useSheetState } from '../sheet/index.ts';
import { movables } from './movable.ts';

/** The places of the bay's points, to be typed. */
export function PlaceTable({ kit }: { readonly kit: Kit }): VNode {
  const points = movables(kit).filter(({ points: own }) => own.length === 1);
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

import type { ShopFileRevisionSummary } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchReadingsRevision, fetchReadingsRevisions } from '../../api/index.ts';
import { useReadings, useReadingsDesk } from '../../job/readings/index.ts';

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Every revision of the record; an earlier one can be put back, which makes a new one. */
export function RevisionPanel({ id }: { readonly id: string }): VNode | null {
  const desk = useReadingsDesk();
  const newest = useReadings((state) => state.revision);
  const [revisions, setRevisions] = useState<readonly ShopFileRevisionSummary[]>([]);
  const [trouble, setTrouble] = useState<string>();
  useEffect(() => {
    let left = false;
    void fetchReadingsRevisions(id).then((reply) => {
      if (left) return;
      if (reply.ok) setRevisions(reply.value.filter(({ revision_number: n }) => n < newest));
      else setTrouble(reply.failure.message);
    });
    return () => {
      left = true;
    };
  }, [id, newest]);
  const putBack = async (number: number): Promise<void> => {
    const reply = await fetchReadingsRevision(id, number);
    if (reply.ok) desk.setText(reply.value.text);
    setTrouble(reply.ok ? undefined : reply.failure.message);
  };
  if (revisions.length === 0) return null;
  return (
    <section class="panel" aria-labelledby="revisions-title">
      <h2 id="revisions-title">Earlier revisions of the record</h2>
      <ul class="record-revisions">
        {revisions.map(({ revision_number, saved_at }) => (
          <li key={revision_number}>
            Revision {revision_number}, saved {WHEN.format(new Date(saved_at))}{' '}
            <button
              type="button"
              class="quiet"
              aria-label={`Put revision ${revision_number} back`}
              onClick={() => void putBack(revision_number)}
            >
              put back
            </button>
          </li>
        ))}
      </ul>
      {trouble === undefined ? null : (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
    </section>
  );
}

import type { SurveySeam } from '@furrow/engine';
import { recutWords, seamPlace } from '@furrow/papers';
import type { VNode } from 'preact';
import { useReadingsDesk } from '../../job/readings/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { timeOf } from './entry-name.ts';

/** What mends each stretch that fails; a stretch that was cut again is measured anew. */
export function MendPanel({ seam }: { readonly seam: SurveySeam }): VNode | null {
  const units = useUnits();
  const desk = useReadingsDesk();
  if (seam.recut.length === 0) return null;
  const done = ({ from_mm, to_mm, plan }: SurveySeam['recut'][number]): void =>
    desk.change([
      {
        do: 'append',
        path: ['recuts'],
        entry: {
          from: millimetres(plan.start_mm ?? from_mm),
          to: millimetres(plan.end_mm ?? to_mm),
          ...(plan.travel_mm_per_min !== undefined && {
            travel: `${Math.round(plan.travel_mm_per_min)} mm/min`,
          }),
          when: timeOf(new Date()),
        },
      },
    ]);
  return (
    <section class="panel groove-mend" aria-labelledby="mend-title">
      <header class="panel-head">
        <h2 id="mend-title">Mend it</h2>
        <p class="caption">Local codes and licensed practice decide on any repair.</p>
      </header>
      <ul>
        {seam.recut.map((each) => (
          <li key={each.from_mm}>
            <h3>
              {seamPlace(each.from_mm, units)} to {seamPlace(each.to_mm, units)}
            </h3>
            {recutWords(each, units).map((text) => (
              <p key={text}>{text}</p>
            ))}
            {each.plan.kind === 'weld' || each.plan.kind === 'none' ? null : (
              <p>
                <button type="button" class="big" onClick={() => done(each)}>
                  {each.plan.kind === 'grind' ? 'It was ground' : 'It was cut again'}
                </button>{' '}
                <span class="aside">What was read there before counts no more, and stays in the record.</span>
              </p>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A place as the record has it, to a tenth of a millimetre. */
function millimetres(value: number): string {
  return `${Math.round(10 * value) / 10} mm`;
}

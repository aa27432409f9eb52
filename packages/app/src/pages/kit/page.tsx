import type { Example } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { fetchKit, fetchKitExamples } from '../../api/index.ts';
import { type KitDesk, openKitDesk } from '../../job/kit/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { KitView } from './kit-view.tsx';

type Opened =
  | { readonly desk: KitDesk; readonly examples: readonly Example[] }
  | { readonly trouble: string }
  | undefined;

/** The shop's kit: power, leads and air, filled in once and used by every job. */
export function KitPage(): VNode {
  const units = useUnits();
  const shownUnits = useRef(units);
  shownUnits.current = units;
  const [opened, setOpened] = useState<Opened>();
  useEffect(() => {
    let left = false;
    void Promise.all([fetchKit(), fetchKitExamples()]).then(([kit, examples]) => {
      if (left) return;
      if (!kit.ok) setOpened({ trouble: kit.failure.message });
      else {
        setOpened({
          desk: openKitDesk(kit.value, ownMemory(), shownUnits.current),
          examples: examples.ok ? examples.value : [],
        });
      }
    });
    return () => {
      left = true;
    };
  }, []);
  useEffect(() => {
    if (opened !== undefined && 'desk' in opened) opened.desk.setUnits(units);
  }, [opened, units]);
  if (opened === undefined) return <Waiting text="Opening the kit." />;
  if ('trouble' in opened) return <Waiting text={opened.trouble} trouble />;
  return (
    <SheetContext.Provider value={opened.desk}>
      <KitView desk={opened.desk} examples={opened.examples} />
    </SheetContext.Provider>
  );
}

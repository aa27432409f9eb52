import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { fetchKit } from '../../api/index.ts';
import { type KitDesk, openKitDesk } from '../../job/kit/index.ts';
import { JobPage } from '../../job/page/index.ts';
import { kitInUse, useBench, usedKit } from '../../job/state/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { useUnits } from '../../ui/theme/index.ts';
import { BayView } from './bay-view.tsx';
import './style.css';

type Opened = { readonly desk: KitDesk } | { readonly trouble: string } | undefined;

/** The bay in plan view for a job: what stands where, and where the control station goes. */
export function BayPage(): VNode {
  return (
    <JobPage>
      <BayOfKit />
    </JobPage>
  );
}

/** Opens the kit to move what stands in its bay; the job is planned with it at once, saved or not. */
function BayOfKit(): VNode {
  const bench = useBench();
  const units = useUnits();
  const shownUnits = useRef(units);
  shownUnits.current = units;
  const [opened, setOpened] = useState<Opened>();
  useEffect(() => {
    let left = false;
    let forget = (): void => {};
    void fetchKit().then((kit) => {
      if (left) return;
      if (!kit.ok) {
        setOpened({ trouble: kit.failure.message });
        return;
      }
      const demo = usedKit(bench.store.get().kit);
      // without a kit of its own the shop may start from the demo's: saving what was moved in it makes it the shop's
      const saved =
        kit.value.text === '' && demo?.of === 'demo' ? { ...kit.value, text: demo.text } : kit.value;
      const desk = openKitDesk(saved, ownMemory(), shownUnits.current);
      const plan = (): void => {
        const { file, revision } = desk.store.get();
        const of = revision === 0 && file.text === demo?.text ? 'demo' : 'shop';
        const next = kitInUse(file.text, { of, revision, savedAt: kit.value.saved_at ?? undefined });
        if (usedKit(next) !== undefined) bench.setKit(next);
      };
      plan();
      forget = desk.store.listen(plan);
      setOpened({ desk });
    });
    return () => {
      left = true;
      forget();
    };
  }, [bench]);
  useEffect(() => {
    if (opened !== undefined && 'desk' in opened) opened.desk.setUnits(units);
  }, [opened, units]);
  if (opened === undefined) return <Waiting text="Opening the bay." />;
  if ('trouble' in opened) return <Waiting text={opened.trouble} trouble />;
  return (
    <SheetContext.Provider value={opened.desk}>
      <BayView desk={opened.desk} />
    </SheetContext.Provider>
  );
}

import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchKit } from '../../api/index.ts';
import { type KitDesk, openKitDesk } from '../../job/kit/index.ts';
import { JobPage } from '../../job/page/index.ts';
import { useBench } from '../../job/state/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { Waiting } from '../../ui/site/index.ts';
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
      const desk = openKitDesk(kit.value, localStorage);
      const plan = (): void => {
        const { issues, file } = desk.store.get();
        if (issues.length === 0 && file.text.trim() !== '') bench.setKit(file.text);
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
  if (opened === undefined) return <Waiting text="Opening the bay." />;
  if ('trouble' in opened) return <Waiting text={opened.trouble} trouble />;
  return (
    <SheetContext.Provider value={opened.desk}>
      <BayView desk={opened.desk} />
    </SheetContext.Provider>
  );
}

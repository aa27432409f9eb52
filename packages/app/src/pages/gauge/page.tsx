import type { SavedShopFile } from '@furrow/contract';
import type { ReadGauge } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchGauge } from '../../api/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import type { KeptSheet } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { openGauge } from './gauge-desk.ts';
import { GaugeView } from './gauge-view.tsx';
import './style.css';

export { sendGauge } from './send-gauge.ts';

/** The shop's gauge: its study and its checks, entered once and used wherever a depth is read by hand. */
export function GaugePage(): VNode {
  const [saved, setSaved] = useState<SavedShopFile | { readonly trouble: string }>();
  const [desk, setDesk] = useState<KeptSheet<ReadGauge>>();
  useEffect(() => {
    let left = false;
    void fetchGauge().then((reply) => {
      if (!left) setSaved(reply.ok ? reply.value : { trouble: reply.failure.message });
    });
    return () => {
      left = true;
    };
  }, []);
  useEffect(() => {
    if (saved === undefined || 'trouble' in saved) return undefined;
    const opened = openGauge(saved, ownMemory());
    setDesk(opened);
    return () => {
      void opened.saveNow();
      opened.close();
    };
  }, [saved]);
  if (saved !== undefined && 'trouble' in saved) return <Waiting text={saved.trouble} trouble />;
  if (desk === undefined) return <Waiting text="Opening the gauge." />;
  return (
    <SheetContext.Provider value={desk}>
      <GaugeView desk={desk} />
    </SheetContext.Provider>
  );
}

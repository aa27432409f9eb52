import type { SavedShopFile } from '@furrow/contract';
import { type ReadGauge, readGauge } from '@furrow/engine';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchGauge, saveGauge } from '../../api/index.ts';
import { gaugeFile } from '../../sheet/document/index.ts';
import { SheetContext } from '../../sheet/index.ts';
import { type KeptSheet, openKeptSheet } from '../../sheet/keep/index.ts';
import { ownMemory } from '../../ui/session/index.ts';
import { Waiting } from '../../ui/site/index.ts';
import { GaugeView } from './gauge-view.tsx';
import './style.css';

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
    const opened = openKeptSheet<ReadGauge>(
      {
        noun: 'gauge',
        key: 'gauge',
        fileOf: gaugeFile,
        read: readGauge,
      },
      saved,
      '',
      {
        send: saveGauge,
        memory: ownMemory(),
        later(what, milliseconds) {
          const timer = setTimeout(what, milliseconds);
          return () => clearTimeout(timer);
        },
      },
    );
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

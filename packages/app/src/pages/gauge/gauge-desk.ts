import type { SavedShopFile } from '@furrow/contract';
import { type ReadGauge, readGauge } from '@furrow/engine';
import { saveGauge } from '../../api/index.ts';
import { gaugeFile } from '../../sheet/document/index.ts';
import { type KeptSheet, openKeptSheet } from '../../sheet/keep/index.ts';

/** Opens the shop's gauge as it is saved, with the unsaved changes of an earlier visit. */
export function openGauge(saved: SavedShopFile, memory: Storage): KeptSheet<ReadGauge> {
  return openKeptSheet<ReadGauge>(
    { noun: 'gauge', key: 'gauge', fileOf: gaugeFile, read: readGauge },
    saved,
    '',
    {
      send: saveGauge,
      memory,
      later(what, milliseconds) {
        const timer = setTimeout(what, milliseconds);
        return () => clearTimeout(timer);
      },
    },
  );
}

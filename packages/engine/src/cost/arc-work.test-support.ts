import type { ArcWork } from './arc-work.ts';
import { plainGrooveArea } from './groove-section.ts';

/** A plan of two passes over 4 m that leaves a plain groove, as cost sees it. */
export function arcWork(more: Partial<ArcWork> = {}): ArcWork {
  const section = {
    areaPerLength: plainGrooveArea(0.016, 0.01),
    topWidth: 0.016,
    depth: 0.01,
    seamLength: 4,
  };
  return {
    arcTime: { p50: 480, p90: 560 },
    electrodes: { p50: 4, p90: 5 },
    electrodePrice: 3,
    passes: 2,
    startTime: 60,
    layerTime: 0,
    returnTime: 80,
    changeTime: 45,
    gaugeTime: 150,
    coolingTime: 600,
    setUpTime: 2700,
    commissioningTime: 1200,
    power: 0.002,
    air: 0.0006,
    hirePerDay: 0,
    shift: 8 * 3600,
    section,
    depth: { p05: 0.009, p50: 0.01, p95: 0.0115 },
    width: { p05: 0.015, p50: 0.016, p95: 0.017 },
    depthReached: 0.95,
    reworkTime: undefined,
    ...more,
  };
}

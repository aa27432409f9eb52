import { fromUnit } from '@furrow/engine';
import { useHeat } from './heat-context.ts';
import { frameOf, type ShownHeat } from './heat-state.ts';
import { type TorchPlace, torchPlace } from './torch-place.ts';

/** Where the torch is at the moment looked at; undefined between passes. */
export function useTorch(shown: ShownHeat | undefined): TorchPlace | undefined {
  const time = useHeat((state) => state.time);
  if (shown === undefined) return undefined;
  const frame = frameOf(shown, time);
  const { read, answer } = shown.planned;
  const { plan } = answer;
  if (frame === undefined || plan === undefined) return undefined;
  const { seam, rates } = read.job;
  const runOut = Math.max(0, (fromUnit(plan.pass_length_mm, 'mm') - seam.length) / 2);
  const passes = shown.heat.report.passes.flatMap(({ number, at_station_s }) => {
    const planned = plan.passes.find((pass) => pass.number === number);
    if (planned === undefined) return [];
    const changes = plan.electrode_changes.filter(({ pass }) => pass === number);
    return [
      {
        number,
        at: at_station_s.middle,
        travel: fromUnit(planned.travel_mm_per_min, 'mm/min'),
        changes: changes.map(({ at_mm }) => fromUnit(at_mm, 'mm')).sort((one, other) => one - other),
      },
    ];
  });
  const course = {
    station: fromUnit(shown.heat.report.station_mm, 'mm'),
    from: -runOut,
    to: seam.length + runOut,
    changeTime: rates.electrode_change_time,
  };
  return torchPlace(passes, course, frame.time);
}

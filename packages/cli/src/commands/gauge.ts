import { PROGRAM_VERSION } from '@furrow/contract';
import { answerGauge, type UnitSystem } from '@furrow/engine';
import { renderGaugeText } from '@furrow/papers';
import { badInput, type Run } from '../frame/command.ts';
import { EXIT } from '../frame/exit-code.ts';
import { loadGauge } from '../frame/load-document.ts';
import { printed } from '../frame/on-job.ts';

interface GaugeOptions {
  readonly json: boolean;
  readonly units: UnitSystem;
}

/** Tells what study and checks say of a gauge. */
export const run: Run<GaugeOptions> = async ([file = '-'], { json, units }) => {
  const loaded = await loadGauge(file);
  if (!loaded.ok) return badInput(loaded.lines);
  const report = answerGauge(loaded.read, PROGRAM_VERSION);
  return { exit: EXIT.plan, print: printed(json, report, () => renderGaugeText(report, units)) };
};

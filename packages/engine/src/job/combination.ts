import type { CombinationIssue, DocumentPath } from '../document/index.ts';
import { checkComposition } from '../material/index.ts';
import {
  amountOf,
  boundOf,
  joinSentences,
  type QuantityKind,
  type Sentence,
  say,
} from '../quantity/index.ts';
import type { Job } from './job.ts';
import { siteIssues } from './site-combination.ts';

/** Share by which a stated girth length may differ from pi times the diameter [-]. */
const GIRTH_AGREEMENT = 0.01;

/** Finds fields that are each fine but contradict each other. */
export function combinationIssues(job: Job): CombinationIssue[] {
  const issues: CombinationIssue[] = [];
  const add = (at: DocumentPath, message: Sentence, accepted: Sentence): void => {
    issues.push({ message, accepted, at });
  };
  const { seam, groove, plate, kit, locks } = job;
  if (Number.isNaN(seam.length)) {
    const missing = seam.path === 'girth' ? 'diameter' : 'length';
    add(['seam', missing], `A ${seam.path} seam needs its ${missing}.`, `seam.${missing}`);
  } else if (seam.path === 'girth' && seam.diameter !== undefined) {
    const girth = Math.PI * seam.diameter;
    if (Math.abs(seam.length - girth) > GIRTH_AGREEMENT * girth) {
      const shown = amountOf(girth, 'length');
      add(
        ['seam', 'length'],
        say`The girth of this diameter is ${shown}; the length says ${amountOf(seam.length, 'length')}.`,
        say`${shown}, or no length`,
      );
    }
  }
  const composition = checkComposition(plate.composition ?? {});
  if (!composition.ok) {
    for (const { message, accepted } of composition.issues) {
      add(['plate', 'composition'], message, accepted ?? 'mass percents');
    }
  }
  if (groove.depth.minus >= groove.depth.wanted) {
    add(
      ['groove', 'depth', 'minus'],
      'The groove may be shallower by its whole depth, so no groove at all would do.',
      say`less than ${boundOf(groove.depth.wanted, 'length', 'most')}`,
    );
  }
  if (groove.depth.wanted - groove.depth.minus >= plate.thickness) {
    add(
      ['groove', 'depth', 'wanted'],
      say`The groove is as deep as the plate is thick (${amountOf(plate.thickness, 'length')}).`,
      'a depth less than the thickness',
    );
  }
  if (groove.ligament_least >= plate.thickness) {
    add(
      ['groove', 'ligament_least'],
      say`The ligament to keep is as thick as the plate (${amountOf(plate.thickness, 'length')}).`,
      'less than the thickness',
    );
  }
  if (groove.floor_width > groove.width.most) {
    add(
      ['groove', 'floor_width'],
      say`The floor is wider than the groove may be at the surface (${amountOf(groove.width.most, 'length')}).`,
      'at most the greatest width',
    );
  }
  if (groove.shape === 'wash' && groove.floor_width === 0) {
    add(
      ['groove', 'floor_width'],
      'A wash needs the width over which its depth must be reached.',
      'a floor width above 0',
    );
  }
  ordered(['groove', 'width'], groove.width, 'length');
  ordered(['kit', 'current'], kit.current, 'current');
  ordered(['kit', 'travel'], kit.travel, 'speed');
  ordered(['kit', 'arc_voltage'], kit.arc_voltage, 'voltage');
  kit.electrodes.forEach((electrode, index) => {
    const { current_least: least, current_most: most } = electrode;
    if (least !== undefined && most !== undefined && least > most) {
      add(
        ['kit', 'electrodes', index, 'current_least'],
        'The least current of this electrode is above its greatest.',
        say`at most ${boundOf(most, 'current', 'most')}`,
      );
    }
    if (electrode.kind === 'plain' && electrode.stub >= electrode.length) {
      add(
        ['kit', 'electrodes', index, 'stub'],
        'The stub is as long as the electrode, so nothing is left to use.',
        say`less than ${boundOf(electrode.length, 'length', 'most')}`,
      );
    }
  });
  if (kit.arc_voltage.set < kit.arc_voltage.least || kit.arc_voltage.set > kit.arc_voltage.most) {
    add(
      ['kit', 'arc_voltage', 'set'],
      'The set arc voltage lies outside its window.',
      `${kit.arc_voltage.least} V to ${kit.arc_voltage.most} V`,
    );
  }
  const { kept_least: keptLeast, kept_most: keptMost } = job.heat;
  if (keptLeast !== undefined && keptMost !== undefined && keptLeast > keptMost) {
    add(
      ['heat', 'kept_least'],
      `The least share of heat kept (${percent(keptLeast)}) is above the greatest (${percent(keptMost)}).`,
      `at most ${percent(keptMost)}`,
    );
  }
  if (locks.electrode_diameter !== undefined) {
    const wanted = locks.electrode_diameter;
    if (!kit.electrodes.some((electrode) => Math.abs(electrode.diameter - wanted) < 1e-4)) {
      const stock = joinSentences(
        kit.electrodes.map((electrode) => say`${amountOf(electrode.diameter, 'length')}`),
        ', ',
      );
      add(
        ['locks', 'electrode_diameter'],
        say`The locked electrode ${amountOf(wanted, 'length')} is not among the kit's.`,
        stock,
      );
    }
  }
  issues.push(...siteIssues(job));
  return issues;

  function ordered(at: DocumentPath, range: { least: number; most: number }, kind: QuantityKind): void {
    if (range.least > range.most) {
      add(
        [...at, 'least'],
        say`The least (${amountOf(range.least, kind)}) is above the greatest (${amountOf(range.most, kind)}).`,
        say`at most ${boundOf(range.most, kind, 'most')}`,
      );
    }
  }
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}

import type { Issue } from '../../issue/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import { conductorSizeOf } from './conductor-size.ts';
import { HOTTEST } from './copper.ts';
import type { Lead, LeadJoint } from './lead.ts';
import { outsideRange } from './supply-issue.ts';

/** Everything that keeps a lead from being reckoned with. */
export function leadIssues(lead: Lead, path: string, ambient: number): readonly Issue[] {
  const name = `The lead "${lead.name}"`;
  const size = conductorSizeOf(lead.area, `${path}.area`);
  return [
    ...(size.ok ? tinnedIssues(lead, size.value.tinnedResistance, path) : size.issues),
    ...outsideRange(
      lead.length,
      { least: 0, most: 1000, unit: 'm', above: true },
      `${name}: its length`,
      `${path}.length`,
    ),
    ...parallelIssues(lead, path),
    ...(lead.resistance === undefined
      ? []
      : outsideRange(
          lead.resistance,
          { least: 0, most: 0.1, unit: 'ohm/m', above: true },
          `${name}: its resistance`,
          `${path}.resistance`,
        )),
    ...(lead.insulation_limit === undefined
      ? []
      : outsideRange(
          lead.insulation_limit,
          { least: ambient, most: HOTTEST, unit: 'K', above: true },
          `${name}: the limit of its insulation`,
          `${path}.insulation_limit`,
        )),
    ...coveringIssues(lead, path),
    ...(lead.joints ?? []).flatMap((joint, i) => jointIssues(joint, `${path}.joints[${i}]`)),
  ];
}

function tinnedIssues(lead: Lead, tinned: number | undefined, path: string): readonly Issue[] {
  if (lead.metal !== 'tinned copper' || tinned !== undefined || lead.resistance !== undefined) return [];
  return [
    {
      code: 'ELECTRIC_SIZE_UNKNOWN',
      message: `The lead "${lead.name}": no resistance of tinned copper is known for AWG and kcmil sizes; state its own resistance, or plain copper.`,
      path: `${path}.metal`,
      read: 'tinned copper',
      accepted: 'copper, or a resistance per metre beside it',
      nearest: 'copper',
    },
  ];
}

function parallelIssues(lead: Lead, path: string): readonly Issue[] {
  const parallels = lead.parallels ?? 1;
  if (Number.isInteger(parallels) && parallels >= 1 && parallels <= 20) return [];
  return [
    {
      code: 'ELECTRIC_VALUE',
      message: `The lead "${lead.name}": ${parallels} conductors side by side; accepted is a whole number from 1 to 20.`,
      path: `${path}.parallels`,
      read: String(parallels),
      accepted: 'a whole number from 1 to 20',
      nearest: String(Math.min(20, Math.max(1, Math.round(parallels) || 1))),
    },
  ];
}

function coveringIssues(lead: Lead, path: string): readonly Issue[] {
  const { covering } = lead;
  if (covering === undefined) return [];
  const at = `${path}.covering`;
  const what = `The lead "${lead.name}"`;
  // Round copper of this area is the least that can lie inside.
  const solid = Math.sqrt((4 * Math.max(0, lead.area)) / Math.PI) * 0.99;
  const inside = outsideRange(
    covering.conductor_diameter,
    { least: solid, most: 0.1, unit: 'm' },
    `${what}: the diameter of its copper`,
    `${at}.conductor_diameter`,
  );
  if (inside.length > 0) return inside;
  return [
    ...outsideRange(
      covering.outside_diameter,
      { least: covering.conductor_diameter, most: 0.2, unit: 'm', above: true },
      `${what}: its outside diameter`,
      `${at}.outside_diameter`,
    ),
    ...outsideRange(
      covering.thermal_resistivity ?? 5,
      { least: 0.5, most: 20, unit: 'K m/W' },
      `${what}: the thermal resistivity of its covering`,
      `${at}.thermal_resistivity`,
    ),
    ...outsideRange(
      covering.emissivity ?? 0.9,
      { least: 0, most: 1, unit: '' },
      `${what}: the emissivity of its covering`,
      `${at}.emissivity`,
    ),
  ];
}

function jointIssues(joint: LeadJoint, path: string): readonly Issue[] {
  return outsideRange(
    joint.resistance,
    { least: 0, most: 1, unit: 'ohm' },
    `The joint "${joint.name}": its resistance`,
    `${path}.resistance`,
  );
}

/** Everything that keeps a duty from being gone through. */
export function dutyIssues(duty: readonly DutyInterval[], path: string): readonly Issue[] {
  const each = duty.flatMap((interval, i) =>
    outsideRange(
      interval.duration,
      { least: 0, most: 1e6, unit: 's' },
      `Interval ${i + 1} of the duty`,
      `${path}[${i}].duration`,
    ),
  );
  if (each.length > 0 || duty.some((interval) => interval.arc && interval.duration > 0)) return each;
  const message = 'The duty has no time with the arc on; give at least one interval with it.';
  return [
    { code: 'ELECTRIC_VALUE', message, path, accepted: 'one interval with the arc on, or no duty at all' },
  ];
}

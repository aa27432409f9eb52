import { amountOf, type Sentence, say } from '../../quantity/index.ts';
import type { DutyInterval } from '../duty/index.ts';
import { conductorOf } from './conductor.ts';
import { type ConductorSize, nextSize } from './conductor-size.ts';
import type { ElectricLoop } from './electric-loop.ts';
import type { Lead } from './lead.ts';
import type { Characteristic, SourceBranch } from './power-source.ts';
import { resized } from './resized-lead.ts';

/** Sources, leads, arc and duty that limits are worked out for. */
export interface ElectricSetting extends Pick<ElectricLoop, 'sources' | 'leads' | 'ambient'> {
  /** [A] */
  readonly current: number;
  /** Voltage wanted at the arc [V]. */
  readonly voltage: number;
  readonly duty: readonly DutyInterval[];
}

/** A setting as it would be after one change, and the change in words. */
export interface Change {
  readonly says: Sentence;
  readonly setting: ElectricSetting;
}

/** One kind of change: for each thing it can be made to, what it would be made to, the least first. */
export interface Way {
  /** What is changed, as in "no single change of …". */
  readonly of: string;
  readonly changes: (setting: ElectricSetting) => readonly (readonly Change[])[];
}

const PARALLELS_MOST = 20;
/** Less current than this share of what is wanted is another job [-]; judgement, no source. */
const CURRENT_LEAST = 0.5;
/** Longest pause between passes that is asked for [s]. */
const PAUSE_MOST = 1800;
/** Sources that differ by more are not of one kind [V]; judgement, no source. */
const VOLTS_MOST = 60;
/** The period that sources are rated over, and how many of them a duty is tried for [s], [-]. */
const [PERIOD, PERIODS] = [600, 6];

/** Whole numbers from 1 up to one. */
function upTo(most: number): number[] {
  return Array.from({ length: Math.max(0, Math.floor(most)) }, (_, i) => i + 1);
}

/** What each lead, of the whole current or of one source, can be changed to. */
function eachLead(
  setting: ElectricSetting,
  others: (lead: Lead) => readonly { readonly says: Sentence; readonly lead: Lead }[],
): Change[][] {
  const of = (leads: readonly Lead[], put: (leads: readonly Lead[]) => ElectricSetting): Change[][] =>
    leads.map((lead, place) =>
      others(lead).map(({ says, lead: other }) => ({ says, setting: put(leads.with(place, other)) })),
    );
  return [
    ...of(setting.leads, (leads) => ({ ...setting, leads })),
    ...setting.sources.flatMap((branch, place) =>
      of(branch.leads ?? [], (leads) => ({
        ...setting,
        sources: setting.sources.with(place, { ...branch, leads }),
      })),
    ),
  ];
}

function layText(lead: Lead, parallels: number, size: ConductorSize): string {
  return `lay the lead "${lead.name}" as ${parallels} x ${size.name}`;
}

/** More conductors side by side in one lead. */
export const MORE_PARALLELS: Way = {
  of: 'conductors side by side',
  changes: (setting) =>
    eachLead(setting, (lead) => {
      const now = lead.parallels ?? 1;
      const { size } = conductorOf(lead);
      return upTo(PARALLELS_MOST - now).map((added) => ({
        says: layText(lead, now + added, size),
        lead: { ...lead, parallels: now + added },
      }));
    }),
};

function sizesAbove(size: ConductorSize): ConductorSize[] {
  const larger = nextSize(size);
  return larger === undefined ? [] : [larger, ...sizesAbove(larger)];
}

/** A larger size of one lead. */
export const LARGER_SIZE: Way = {
  of: 'lead size',
  changes: (setting) =>
    eachLead(setting, (lead) =>
      sizesAbove(conductorOf(lead).size).map((size) => ({
        says: layText(lead, lead.parallels ?? 1, size),
        lead: resized(lead, size),
      })),
    ),
};

/** Less current, in whole amperes, down to half of it. */
export const LESS_CURRENT: Way = {
  of: 'current',
  changes: (setting) => {
    const most = Math.ceil(setting.current) - 1;
    const least = Math.ceil(CURRENT_LEAST * setting.current);
    return [
      upTo(most - least + 1).map((less) => {
        const current = most + 1 - less;
        return { says: `run at no more than ${current} A`, setting: { ...setting, current } };
      }),
    ];
  },
};

/** One more of the sources there are, beside them. */
export const SOURCE_BESIDE: Way = {
  of: 'a source more',
  changes: (setting) =>
    setting.sources.map((branch) => [
      {
        says: `another source like "${branch.source.name}" beside it`,
        setting: { ...setting, sources: [...setting.sources, branch] },
      },
    ]),
};

function raised(branch: SourceBranch, volts: number): SourceBranch {
  const { characteristic } = branch.source;
  const higher: Characteristic =
    characteristic.kind === 'points'
      ? {
          ...characteristic,
          points: characteristic.points.map((point) => ({ ...point, voltage: point.voltage + volts })),
        }
      : { ...characteristic, no_load_voltage: characteristic.no_load_voltage + volts };
  return { ...branch, source: { ...branch.source, characteristic: higher } };
}

/** Sources of the same kind that give more volts. */
export const MORE_VOLTS: Way = {
  of: 'source voltage',
  changes: (setting) => [
    upTo(10 * VOLTS_MOST).map((tenths) => ({
      says: `${setting.sources.length > 1 ? 'sources that give' : 'a source that gives'} ${(tenths / 10).toFixed(1)} V more at ${Math.round(setting.current)} A`,
      setting: { ...setting, sources: setting.sources.map((branch) => raised(branch, tenths / 10)) },
    })),
  ],
};

function noLoadOf({ source: { characteristic } }: SourceBranch): number {
  return characteristic.kind === 'points'
    ? characteristic.points[0]!.voltage
    : characteristic.no_load_voltage;
}

/** One source of several set to more volts, as far as the highest of the others: beyond it the others give nothing. */
export const SET_HIGHER: Way = {
  of: 'a source’s setting',
  changes: ({ sources, ...setting }) => {
    const highest = Math.max(...sources.map(noLoadOf));
    return sources.map((branch, place) =>
      upTo(10 * (highest - noLoadOf(branch))).map((tenths) => ({
        says: `set "${branch.source.name}" to a voltage ${(tenths / 10).toFixed(1)} V higher, where it can be`,
        setting: { ...setting, sources: sources.with(place, raised(branch, tenths / 10)) },
      })),
    );
  },
};

/** Longer pauses between the passes. */
export const LONGER_PAUSES: Way = {
  of: 'pauses between passes',
  changes: (setting) => {
    const { duty } = setting;
    if (duty.every(({ arc }) => arc)) return [];
    return [
      upTo(PAUSE_MOST / 10).map((tens) => ({
        says: say`${amountOf(10 * tens, 'time')} more between the passes`,
        setting: {
          ...setting,
          duty: duty.map(({ arc, duration }) => ({ arc, duration: arc ? duration : duration + 10 * tens })),
        },
      })),
    ];
  },
};

/** Fewer minutes of arc in ten, over an hour. */
export const FEWER_MINUTES: Way = {
  of: 'minutes of arc in ten',
  changes: (setting) => [
    upTo(99).map((less) => {
      const minutes = 10 - less / 10;
      const spell: DutyInterval[] = [
        { arc: true, duration: 60 * minutes },
        { arc: false, duration: PERIOD - 60 * minutes },
      ];
      return {
        says: `no more than ${minutes.toFixed(1)} minutes of arc in any ten`,
        setting: { ...setting, duty: upTo(PERIODS).flatMap(() => spell) },
      };
    }),
  ],
};

/** One joint made sound: it then shows so many millivolts less, in hundredths of what it shows. */
export function soundJoint(name: string, { drop_V, heat_W }: { drop_V: number; heat_W: number }): Way {
  const millivolts = (volts: number): string => `${Number((volts * 1000).toPrecision(2))} mV`;
  return {
    of: `the joint "${name}", which makes ${Math.round(heat_W)} W,`,
    changes: (setting) => [
      ...eachLead(setting, (lead) => {
        const place = (lead.joints ?? []).findIndex((joint) => joint.name === name);
        const joint = lead.joints?.[place];
        if (joint === undefined) return [];
        return upTo(99).map((hundredths) => {
          const share = 1 - hundredths / 100;
          const mended = { ...joint, resistance: joint.resistance * share };
          return {
            says: `clean and tighten the joint "${name}", which makes ${Math.round(heat_W)} W, until it shows no more than ${millivolts(share * drop_V)} in place of ${millivolts(drop_V)}`,
            lead: { ...lead, joints: lead.joints!.with(place, mended) },
          };
        });
      }),
    ],
  };
}

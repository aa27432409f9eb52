import type { Job } from '../job/index.ts';
import { amountOf, FOOT, say } from '../quantity/index.ts';
import { electrodeName } from '../removal/index.ts';
import { europeanShade, leastShade, suggestedShade } from './filter-shade.ts';
import { confirmed, derived, hazardRow, recalled } from './hazard-row.ts';
import type { FireZoneOutcome, HazardSettingOutcome, SectionOutcome } from './outcome.ts';
import { GOUGING_SOUND_POWER } from './process-noise.ts';
import { distanceToLevel } from './sound-level.ts';

const MINUTE = 60;
/** Level down to which distance is told [dBA]. */
const QUIET_ENOUGH = 85;
/** How far the rule looks for fuel around hot work: 35 ft. */
const SWEPT = amountOf(35 * FOOT, 'length');

/** Noise beside the crews' own: what distance does, and what lowers it. */
export function noiseSection({ torches }: HazardSettingOutcome): SectionOutcome {
  const { least, most, source } = GOUGING_SOUND_POWER;
  const many = 10 * Math.log10(torches);
  const note = `free field over a floor, ${torches === 1 ? 'one torch' : `${torches} torches together`}; a bay that reverberates is louder`;
  return {
    id: 'noise',
    title: 'Noise',
    figures: [
      {
        name: `Distance to ${QUIET_ENOUGH} dBA, electrode of ${electrodeName(0.009525)}`,
        value: distanceToLevel(least + many, QUIET_ENOUGH),
        unit: 'm',
        note,
        source,
      },
      {
        name: `Distance to ${QUIET_ENOUGH} dBA, electrode of ${electrodeName(0.0127)}`,
        value: distanceToLevel(most + many, QUIET_ENOUGH),
        unit: 'm',
        note,
        source,
      },
    ],
    rows: [],
    rules: [
      {
        text: 'Lower the current to the least that still cuts, then the air pressure; then fewer passes, mechanised travel with the person away from the arc, screens, and protectors last.',
        source: confirmed(source.text),
      },
      {
        text: 'A measured level replaces every estimate. The two families of rules are told beside each other and never mixed in one figure.',
        source: derived('29 CFR 1910.95; NIOSH Publication 98-126; Directive 2003/10/EC'),
      },
      {
        text: 'Impulse noise stays under 140 dB peak.',
        source: confirmed('29 CFR 1910.95(b)'),
      },
    ],
  };
}

/** Filter shade by the current of the plan. */
export function eyesSection({ site }: Job, { current }: HazardSettingOutcome): SectionOutcome {
  const least = leastShade(current);
  const worn = site.eyes.shade ?? null;
  const suggested = [
    { name: 'Shade suggested for comfort', ...suggestedShade(current) },
    { name: 'Scale number for air-arc gouging', ...europeanShade(current) },
  ];
  return {
    id: 'eyes',
    title: 'Eyes and skin',
    figures: suggested.map(({ name, shade, source }) => ({
      name,
      value: shade,
      unit: 'shade',
      note: shade === null ? 'not covered by the source at this current' : '',
      source,
    })),
    rows: [
      hazardRow({
        id: 'shade_least',
        rule: 'Least filter shade at the greatest current',
        value: worn,
        figure: least.shade,
        unit: 'shade',
        sense: 'least',
        source: least.source,
        note:
          least.shade === null
            ? 'the table has no row above 1000 A: a competent person decides'
            : worn === null
              ? 'no filter shade is stated'
              : '',
      }),
    ],
    rules: [
      {
        text: 'Begin with a shade that is too dark and go lighter without passing the least.',
        source: confirmed('29 CFR 1910.133(a)(5)'),
      },
      {
        text: 'Leather, closed collar, no cuffs or open pockets; screens for others nearby.',
        source: { text: 'common practice, no source', provenance: 'common practice' },
      },
    ],
  };
}

/** Fire: what is clear against the zone, and how long the watch stays. */
export function fireSection({ site }: Job, zone: FireZoneOutcome): SectionOutcome {
  const { clear, clear_ahead: ahead, watch } = site.fire;
  const osha = confirmed('29 CFR 1910.252(a)(2)(iii)');
  const nfpa = confirmed('NFPA 51B; USACE contracts');
  const watchNote = watch === undefined ? 'no watch is stated' : '';
  return {
    id: 'fire',
    title: 'Fire',
    figures: [
      {
        name: 'Zone all round',
        value: zone.radius,
        unit: 'm',
        note: 'never less than the rule names',
        source: osha,
      },
      {
        name: 'Zone ahead of the torch',
        value: zone.ahead,
        unit: 'm',
        note: 'along the jet',
        source: confirmed('fire-protection engineer quoted in ENR'),
      },
      { name: 'Upwards', value: zone.up, unit: 'm', note: '', source: DGUV },
      { name: 'Downwards', value: zone.down, unit: 'm', note: 'floors and openings below', source: DGUV },
      {
        name: 'Fire watch, longest that applies',
        value: zone.watch,
        unit: 'min',
        note: 'the site permit may ask for more',
        source: nfpa,
      },
    ],
    rows: [
      hazardRow({
        id: 'fire_clear',
        rule: 'Clear of what can burn, all round',
        value: clear ?? null,
        figure: zone.radius,
        unit: 'm',
        sense: 'least',
        source: osha,
        note: clear === undefined ? 'no clear distance is stated' : '',
      }),
      hazardRow({
        id: 'fire_clear_ahead',
        rule: 'Clear of what can burn, ahead along the jet',
        value: ahead ?? null,
        figure: zone.ahead,
        unit: 'm',
        sense: 'least',
        source: confirmed('fire-protection engineer quoted in ENR'),
        note: ahead === undefined ? 'no clear distance ahead is stated' : '',
      }),
      hazardRow({
        id: 'fire_watch_osha',
        rule: 'Fire watch after the last arc, OSHA',
        value: watch ?? null,
        figure: 30 * MINUTE,
        unit: 'min',
        sense: 'least',
        source: osha,
        note: watchNote,
      }),
      hazardRow({
        id: 'fire_watch_nfpa',
        rule: 'Fire watch after the last arc, NFPA 51B',
        value: watch ?? null,
        figure: 60 * MINUTE,
        unit: 'min',
        sense: 'least',
        source: nfpa,
        note: watchNote,
      }),
    ],
    rules: [
      {
        text: say`A watch is needed where more than a minor fire could develop, where fuel lies within ${SWEPT} or farther but easily lit, where openings within ${SWEPT} expose fuel, and where fuel touches the far side of a metal wall.`,
        source: osha,
      },
      {
        text: say`Floors swept for ${SWEPT}; sprinklers stay in service; what cannot be moved is covered.`,
        source: osha,
      },
      {
        text: 'Where sparks are seen to travel farther than the zone, the zone grows.',
        source: confirmed('fire-protection engineer quoted in ENR'),
      },
    ],
  };
}

const DGUV = confirmed('DGUV Information 209-015 figure 4-1, thermal cutting');

/** Stored heat: what skin meets at the plate. */
export function heatSection({ heat }: Job): SectionOutcome {
  const source = recalled('ISO 13732-1, bare metal');
  return {
    id: 'heat',
    title: 'Stored heat',
    figures: [
      { name: 'Burn by a touch of 1 s', value: 338.15, unit: 'degC', note: 'approximate', source },
      { name: 'Burn by a touch of 10 s', value: 328.15, unit: 'degC', note: 'approximate', source },
    ],
    rows: [
      hazardRow({
        id: 'hot_plate',
        rule: 'Plate beside the groove, as hot as a pass may start',
        value: heat.interpass_most,
        figure: 328.15,
        unit: 'degC',
        sense: 'most',
        source,
        note: 'by the interpass temperature of the job; groove and slag are far hotter, for minutes',
      }),
    ],
    rules: [
      {
        text: 'Mark hot metal and the time; gloves stay on until a reading says that it is cold.',
        source: { text: 'common practice, no source', provenance: 'common practice' },
      },
      {
        text: 'Preheat may be needed before gouging, above all where the code asks for heat treatment after welding.',
        source: confirmed('ASME PCC-2 Article 304, 304-2.6.2'),
      },
      {
        text: 'Preheat for gouging at least as the welding procedure asks, unless the responsible engineer says otherwise.',
        source: { text: 'common practice, no source', provenance: 'common practice' },
      },
    ],
  };
}

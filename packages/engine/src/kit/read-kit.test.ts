import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { parseAmount } from '../quantity/index.ts';
import { airOfKit } from './air-of-kit.ts';
import { electricOfKit } from './electric-of-kit.ts';
import { kitFields, kitJsonSchema } from './kit-fields.ts';
import { readKit } from './read-kit.ts';

const TEXT = readFileSync(new URL('../../../../examples/yard-kit.yaml', import.meta.url), 'utf8');
type Raw = ReturnType<typeof parse>;

function spoilt(change: (kit: Raw) => void): string[] {
  const kit = parse(TEXT);
  change(kit);
  const outcome = readKit(JSON.stringify(kit));
  return outcome.ok ? [] : outcome.issues.map(({ code, path }) => `${code} ${path}`);
}

describe('a kit file', () => {
  it('is read into SI, with its defaults and its revision', () => {
    const outcome = readKit(TEXT);
    if (!outcome.ok) throw new Error(outcome.issues.map(({ message }) => message).join('\n'));
    const { kit, defaultsUsed, revision } = outcome.value;
    expect(kit.sources[0]!.slope).toBeCloseTo(0.04, 12);
    expect(kit.air.receiver.volume).toBeCloseTo(0.5, 12);
    expect(defaultsUsed.map(({ path }) => path)).toContain('ambient.atmosphere');
    expect(revision).toMatch(/^[0-9a-f]{64}$/u);
    expect(readKit(`# a remark\n${TEXT}`)).toMatchObject({ value: { revision } });
  });

  it('gives the loop its sources one by one and the air its conductance', () => {
    const outcome = readKit(TEXT);
    if (!outcome.ok) throw new Error('the example is not in order');
    const { electric, kitPath } = electricOfKit(outcome.value.kit);
    expect(electric.sources.map(({ source }) => source.name)).toEqual(['Rectifier 1', 'Rectifier 2']);
    expect(kitPath('sources[1].source.characteristic.slope')).toEqual(['sources', 0, 'slope']);
    expect(kitPath('leads[2].area')).toEqual(['leads', 2, 'size']);
    // 25 scfm at 80 psi, choked: free air over absolute pressure, referred to the ISO 6358 atmosphere.
    const { torch } = airOfKit(outcome.value.kit);
    if (torch.kind !== 'conductance') throw new Error('the example states a flow');
    const mass = ((25 * 0.3048 ** 3) / 60) * (100_000 / (287.05287 * 293.15));
    const inlet = 80 * 6894.757293168361 + 101_325;
    expect(torch.conductance).toBeCloseTo(mass / (inlet * 1.185 * Math.sqrt(293.15 / 303.15)), 12);
  });

  it.each<[string, (kit: Raw) => void, string]>([
    [
      'an unknown field',
      (kit) => Object.assign(kit.leads[0], { lenght: '3 m' }),
      'KIT_FIELD_UNKNOWN leads[0].lenght',
    ],
    ['a missing field', (kit) => delete kit.leads[0].length, 'KIT_FIELD_MISSING leads[0].length'],
    [
      'a negative length',
      (kit) => Object.assign(kit.leads[0], { length: '-3 m' }),
      'AMOUNT_RANGE leads[0].length',
    ],
    [
      'a zero length',
      (kit) => Object.assign(kit.leads[0], { length: '0 m' }),
      'AMOUNT_RANGE leads[0].length',
    ],
    [
      'another choice',
      (kit) => Object.assign(kit.leads[0], { side: 'left' }),
      'KIT_FIELD_VALUE leads[0].side',
    ],
    ['another version', (kit) => Object.assign(kit, { furrow_kit: 2 }), 'KIT_VERSION furrow_kit'],
    [
      'an unlisted lead',
      (kit) => Object.assign(kit.leads[1], { size: '90 mm2' }),
      'ELECTRIC_SIZE_UNKNOWN leads[1].size',
    ],
    [
      'an unlisted lead in stock',
      (kit) => Object.assign(kit.stock.leads[1], { size: '90 mm2' }),
      'ELECTRIC_SIZE_UNKNOWN stock.leads[1].size',
    ],
    [
      'an unknown hose',
      (kit) => Object.assign(kit.air.path[2], { size: '9/16 in' }),
      'AIR_SIZE_UNKNOWN air.path[2].size',
    ],
    [
      'an unknown fitting',
      (kit) => Object.assign(kit.air.path[0].fittings[0], { name: 'bend' }),
      'AIR_SIZE_UNKNOWN air.path[0].fittings[0].name',
    ],
    ['a line without a slope', (kit) => delete kit.sources[0].slope, 'KIT_COMBINATION sources[0].slope'],
    [
      'half of the mains',
      (kit) => delete kit.sources[0].mains_phases,
      'KIT_COMBINATION sources[0].mains_phases',
    ],
    [
      'a lead of no source',
      (kit) => Object.assign(kit.leads[0], { source: 'Other' }),
      'KIT_COMBINATION leads[0].source',
    ],
    ['no way back', (kit) => kit.leads.pop(), 'KIT_COMBINATION leads'],
    [
      'two of one name',
      (kit) => Object.assign(kit.leads[1], { name: 'Electrode lead' }),
      'KIT_COMBINATION leads[1].name',
    ],
    [
      'a cut-out below the cut-in',
      (kit) => Object.assign(kit.air.receiver, { cut_out: '7 bar' }),
      'KIT_COMBINATION air.receiver.cut_out',
    ],
    [
      'a delivery that falls in pressure',
      (kit) => kit.air.compressor.delivery.reverse(),
      'KIT_COMBINATION air.compressor.delivery[1].pressure',
    ],
    [
      'a regulator without its pressure',
      (kit) => delete kit.air.path[3].set,
      'KIT_COMBINATION air.path[3].set',
    ],
    [
      'a hose of two sizes',
      (kit) => Object.assign(kit.air.path[2], { bore: '12 mm' }),
      'KIT_COMBINATION air.path[2].bore',
    ],
    [
      'a torch without a passage',
      (kit) => Object.assign(kit.air, { torch: {} }),
      'KIT_COMBINATION air.torch',
    ],
    [
      'a torch of two passages',
      (kit) => Object.assign(kit.air.torch, { bore: '3 mm' }),
      'KIT_COMBINATION air.torch',
    ],
    [
      'a flow without its pressure',
      (kit) => delete kit.air.torch.flow_at,
      'KIT_COMBINATION air.torch.flow_at',
    ],
    [
      'a flow that is not choked',
      (kit) => Object.assign(kit.air.torch, { flow_at: '5 psi' }),
      'KIT_COMBINATION air.torch.flow_at',
    ],
    [
      'a closed valve',
      (kit) =>
        kit.air.path.push({
          name: 'Valve',
          kind: 'component',
          conductance_dm3_per_s_bar: 20,
          valve: 'closed',
        }),
      'AIR_CLOSED air.path[5]',
    ],
    [
      'a rating below nothing',
      (kit) => Object.assign(kit.sources[0], { rating: [] }),
      'KIT_FIELD_VALUE sources[0].rating',
    ],
  ])('refuses %s', (_what, change, issue) => {
    expect(spoilt(change)).toContain(issue);
  });

  it('tells the line of what is wrong', () => {
    const outcome = readKit(TEXT.replace('kind: hose, size: 1/2 in', 'kind: hose, size: 9/16 in'));
    const line = TEXT.split('\n').findIndex((each) => each.includes('Drop hose')) + 1;
    expect(outcome).toMatchObject({ ok: false, issues: [{ position: { line } }] });
  });
});

describe('the fields of a kit', () => {
  it('are told once each, with defaults that are accepted', () => {
    const fields = kitFields();
    expect(new Set(fields.map(({ path }) => path)).size).toBe(fields.length);
    for (const { path, title, help, entry, kind, fallback, options } of fields) {
      expect(title, path).not.toBe('');
      expect(help, path).toMatch(/\.$/u);
      if (fallback === undefined) continue;
      if (entry === 'amount') expect(parseAmount(String(fallback), kind!), path).toMatchObject({ ok: true });
      if (entry === 'choice') expect(options, path).toContain(fallback);
      if (entry === 'number') expect(typeof fallback, path).toBe('number');
    }
  });

  it('have a JSON Schema that asks for no field with a default', () => {
    expect(kitJsonSchema()['required']).toEqual(['furrow_kit', 'title', 'sources', 'leads', 'air']);
  });
});

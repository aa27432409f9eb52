import type { CombinationIssue, DocumentPath } from '../document/index.ts';
import { amountOf, boundOf, type Sentence, say } from '../quantity/index.ts';
import { checkAir, conductorSizeOf, electricLimits } from '../supply/index.ts';
import { airOfKit, airPathInKit, unknownSizes } from './air-of-kit.ts';
import { electricOfKit } from './electric-of-kit.ts';
import type { Kit } from './kit-schema.ts';

type Add = (at: DocumentPath, message: Sentence, accepted: Sentence) => void;

/** A torch is choked, as its flow is stated, from this many atmospheres on [-]. */
const CHOKED_FROM = 1.9;

/** Finds fields of a kit that are each fine but contradict each other, or that the supply cannot work with. */
export function contradictions(kit: Kit): readonly CombinationIssue[] {
  const issues: CombinationIssue[] = [];
  const add: Add = (at, message, accepted) => void issues.push({ at, message, accepted });
  sources(kit, add);
  leads(kit, add);
  air(kit, add);
  torch(kit, add);
  for (const { issue, at } of unknownSizes(kit)) issues.push({ ...issue, at });
  for (const [i, { size }] of (kit.stock.leads ?? []).entries()) {
    const known = conductorSizeOf(size, '');
    if (!known.ok)
      issues.push(...known.issues.map((issue) => ({ ...issue, at: ['stock', 'leads', i, 'size'] })));
  }
  // What is wrong by itself would be told twice by the rooms that compute with it.
  return issues.length > 0 ? issues : supplyIssues(kit);
}

function supplyIssues(kit: Kit): readonly CombinationIssue[] {
  const { electric, kitPath } = electricOfKit(kit);
  const limits = electricLimits(electric);
  return [
    ...(limits.ok ? [] : limits.issues.map((issue) => ({ ...issue, at: kitPath(issue.path) }))),
    ...checkAir(airOfKit(kit)).map((issue) => ({ ...issue, at: airPathInKit(issue.path) })),
  ];
}

function sources(kit: Kit, add: Add): void {
  unique(kit.sources, ['sources'], add);
  for (const [i, source] of kit.sources.entries()) {
    const at = ['sources', i];
    const needed =
      source.characteristic === 'points' ? (['points'] as const) : (['no_load_voltage', 'slope'] as const);
    for (const field of needed) {
      if (source[field] !== undefined) continue;
      const what = { points: 'its points', no_load_voltage: 'its no-load voltage', slope: 'its slope' }[
        field
      ];
      add(
        [...at, field],
        `The source “${source.name}” is ${source.characteristic === 'points' ? 'described by points' : source.characteristic}, so it needs ${what}.`,
        `sources[${i}].${field}`,
      );
    }
    if ((source.mains_voltage === undefined) !== (source.mains_phases === undefined)) {
      const missing = source.mains_voltage === undefined ? 'mains_voltage' : 'mains_phases';
      add(
        [...at, missing],
        `The source “${source.name}” has only a part of its mains; state voltage and phases, or neither.`,
        missing,
      );
    }
  }
}

function leads(kit: Kit, add: Add): void {
  unique(kit.leads, ['leads'], add);
  const names = kit.sources.map(({ name }) => name);
  for (const [i, { name, source }] of kit.leads.entries()) {
    if (source === undefined || names.includes(source)) continue;
    add(
      ['leads', i, 'source'],
      `The lead “${name}” hangs on “${source}”, which is no source of this kit.`,
      names.join(', '),
    );
  }
  for (const side of ['electrode', 'work'] as const) {
    if (kit.leads.some((lead) => lead.side === side)) continue;
    add(['leads'], `No lead is on the ${side} side, so the loop is not closed.`, `a lead with side: ${side}`);
  }
}

function air({ air: { receiver, compressor, path }, stock }: Kit, add: Add): void {
  unique(path, ['air', 'path'], add);
  if (receiver.cut_out <= receiver.cut_in) {
    add(
      ['air', 'receiver', 'cut_out'],
      say`The compressor stops at ${amountOf(receiver.cut_out, 'pressure')}, not above the ${amountOf(receiver.cut_in, 'pressure')} at which it starts.`,
      say`more than ${boundOf(receiver.cut_in, 'pressure', 'least')}`,
    );
  }
  for (const [i, { pressure }] of compressor.delivery.entries()) {
    if (i === 0 || pressure > compressor.delivery[i - 1]!.pressure) continue;
    add(
      ['air', 'compressor', 'delivery', i, 'pressure'],
      'The delivery is not stated by rising pressure.',
      say`more than ${boundOf(compressor.delivery[i - 1]!.pressure, 'pressure', 'least')}`,
    );
  }
  const highest = compressor.delivery.at(-1)!.pressure;
  if (receiver.cut_out > highest * (1 + 1e-9)) {
    add(
      ['air', 'receiver', 'cut_out'],
      say`The compressor stops at ${amountOf(receiver.cut_out, 'pressure')}, but its delivery is known up to ${amountOf(highest, 'pressure')} only.`,
      say`at most ${boundOf(highest, 'pressure', 'most')}, or the delivery at the cut-out`,
    );
  }
  for (const [i, item] of path.entries()) {
    const needed = {
      hose: 'length',
      pipe: 'length',
      component: 'conductance_dm3_per_s_bar',
      regulator: 'set',
      draw: 'flow',
    } as const;
    const field = needed[item.kind];
    if (item[field] === undefined) {
      const what = {
        length: 'its length',
        conductance_dm3_per_s_bar: 'its sonic conductance',
        set: 'its set pressure',
        flow: 'the flow taken',
      }[field];
      add(['air', 'path', i, field], `“${item.name}” is a ${item.kind}, so it needs ${what}.`, field);
    }
    if (item.kind === 'hose' || item.kind === 'pipe') oneSize(item, ['air', 'path', i], add);
  }
  for (const [i, hose] of (stock.hoses ?? []).entries()) oneSize(hose, ['stock', 'hoses', i], add);
}

function oneSize(
  run: { readonly name: string; readonly size?: string | undefined; readonly bore?: number | undefined },
  at: DocumentPath,
  add: Add,
): void {
  if ((run.size === undefined) !== (run.bore === undefined)) return;
  const both = run.size !== undefined;
  add(
    [...at, both ? 'bore' : 'size'],
    `“${run.name}” has ${both ? 'a size and a bore' : 'neither a size nor a bore'}; state one of the two.`,
    'size or bore',
  );
}

function torch({ air: { torch: passage }, ambient }: Kit, add: Add): void {
  const at = ['air', 'torch'];
  const stated = [passage.flow ?? passage.flow_at, passage.conductance_dm3_per_s_bar, passage.bore];
  const count = stated.filter((value) => value !== undefined).length;
  if (count !== 1) {
    add(
      at,
      `The torch’s passage is described ${count === 0 ? 'in no way' : 'in more than one way'}.`,
      'a flow with its pressure, or a sonic conductance, or a bore',
    );
    return;
  }
  if (stated[0] === undefined) return;
  const missing = passage.flow === undefined ? 'flow' : passage.flow_at === undefined ? 'flow_at' : undefined;
  if (missing !== undefined) {
    add(
      [...at, missing],
      'The torch’s flow is known only together with the pressure it is stated at.',
      missing,
    );
    return;
  }
  if (passage.flow === 0) add([...at, 'flow'], 'The torch takes no air.', 'a flow above 0');
  const least = (CHOKED_FROM - 1) * ambient.atmosphere;
  if (passage.flow_at! < least) {
    add(
      [...at, 'flow_at'],
      say`At ${amountOf(passage.flow_at!, 'pressure')} the torch is not choked, so its flow there does not tell its flow elsewhere.`,
      say`at least ${boundOf(least, 'pressure', 'least')}`,
    );
  }
}

/** Names tell things apart in lists of connections and changes. */
function unique(named: readonly { readonly name: string }[], at: DocumentPath, add: Add): void {
  const seen = new Set<string>();
  for (const [i, { name }] of named.entries()) {
    if (seen.has(name))
      add(
        [...at, i, 'name'],
        `Two entries are called “${name}”; give each a name of its own.`,
        'a name used once',
      );
    seen.add(name);
  }
}

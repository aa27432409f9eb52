import { amountOf, PSI, say } from '../quantity/index.ts';
import { CAUTIONS } from './cautions.ts';
import type { CommissionInput } from './commission-input.ts';
import type { CommissionAirPoint } from './commission-supply.ts';
import type { CheckDraft, DraftPart } from './draft.ts';

/** Least pressure at the torch while the air flows: 60 psi, public range of the process [Pa]. */
const TORCH_LEAST = 60 * PSI;

function pressureChecks(point: CommissionAirPoint, place: number, input: CommissionInput): CheckDraft[] {
  const { pressureGauge, regulator, hoseShare } = input.instruments;
  const lost = point.staticPressure.most - point.flowingPressure.most;
  const gauge = { what: 'gauge', figure: pressureGauge, times: 1 };
  const set = { what: 'setting of the regulator', figure: regulator, times: 1 };
  const facts = { kind: 'measure', stage: 'air_on', caution: CAUTIONS.air, unit: 'kPa' } as const;
  return [
    {
      ...facts,
      id: `static_pressure_${place + 1}`,
      title: `Static air pressure, ${point.name}`,
      ask: `Air on and receiver full, valve at the torch shut: read the pressure at ${point.name}.`,
      why: 'It shows what the regulator gives, not what reaches the arc.',
      evidence: 'static_pressure',
      hints: { high: 'The regulator is set too high.' },
      expected: point.staticPressure.most,
      span: point.staticPressure,
      parts: [gauge, set],
    },
    {
      ...facts,
      id: `flowing_pressure_${place + 1}`,
      title: `Flowing air pressure, ${point.name}`,
      ask: `Receiver between cut-in and cut-out, valve at the torch fully open: read the pressure at ${point.name} once it is steady, and the receiver’s gauge beside it.`,
      why: say`${amountOf(Math.abs(lost), 'pressure')} go in the hoses while the air flows; the band reaches from the receiver at its cut-in to a full one. Do not turn the regulator down for a full receiver: the last pass would starve.`,
      evidence: 'flowing_pressure',
      hints: { high: 'The valve at the torch is not fully open, or the regulator is set too high.' },
      expected: point.flowingPressure.most,
      span: point.flowingPressure,
      parts: [gauge, set, { what: 'loss in hoses', figure: hoseShare, times: lost }],
      ...(point.atTorch ? { floor: TORCH_LEAST } : {}),
    },
  ];
}

/** What the receiver stands at: every flowing pressure belongs to one. */
function receiverCheck({ supply, instruments }: CommissionInput): CheckDraft[] {
  const { receiver } = supply;
  if (receiver === undefined) return [];
  const parts: DraftPart[] = [{ what: 'gauge', figure: instruments.pressureGauge, times: 1 }];
  return [
    {
      kind: 'measure',
      stage: 'air_on',
      caution: CAUTIONS.air,
      unit: 'kPa',
      id: 'receiver_pressure',
      title: 'Air pressure in the receiver',
      ask: 'Let the compressor fill the receiver until it stops: read the receiver’s gauge.',
      why: 'The pressures below are those of a receiver between its cut-in and its cut-out.',
      evidence: null,
      hints: {
        low: 'The compressor has not filled it yet, stops too soon, or others take more than it gives.',
        high: 'The pressure switch is set higher than the kit says.',
      },
      expected: receiver.most,
      span: receiver,
      parts,
    },
  ];
}

/** Checks with the air on and no arc. */
export function airChecks(input: CommissionInput): CheckDraft[] {
  const confirm = { kind: 'confirm', stage: 'air_on', caution: CAUTIONS.air } as const;
  return [
    ...receiverCheck(input),
    ...input.supply.airPoints.flatMap((point, place) => pressureChecks(point, place, input)),
    {
      ...confirm,
      id: 'air_dry',
      title: 'Dry air',
      ask: 'Drain the receiver and the separators, then blow onto a clean dry plate for half a minute: no drops.',
      why: 'Water in the jet makes the arc spit and quenches the melt.',
      evidence: 'water_at_torch',
    },
    {
      ...confirm,
      id: 'air_jet',
      title: 'Air jet',
      ask: 'Hold a strip of cloth on a stick into the jet: it runs along the electrode from behind, every hole blows.',
      why: 'A jet that misses the melt leaves it in the groove, whatever the pressure.',
      evidence: 'jet_uneven',
    },
  ];
}

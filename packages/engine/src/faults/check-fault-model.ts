import type { Issue, Outcome } from '../issue/index.ts';
import type { FaultModel, FaultObservable, OutcomeChance } from './model.ts';
import { chanceUnder, outcomesOf } from './outcome-chance.ts';

/** An outcome counts as explained when a cause makes it at least this many times likelier than otherwise [-]. */
export const EXPLAINS_FROM = 3;

function refused(path: string, message: string, read?: string): Issue {
  const issue: Issue = { code: 'FAULT_TABLE', message, path };
  return read === undefined ? issue : { ...issue, read };
}

function inside(chance: number): boolean {
  return chance > 0 && chance < 1;
}

function chanceIssues(path: string, observable: FaultObservable, chance: OutcomeChance): Issue[] {
  const binary = 'yes' in observable.otherwise;
  if ('yes' in chance !== binary) {
    const form = binary ? 'yes' : 'low and high';
    return [refused(path, `"${observable.id}" takes a chance of ${form}, as under otherwise.`)];
  }
  const listed = 'yes' in chance ? [chance.yes] : [chance.low, chance.high, 1 - chance.low - chance.high];
  if (listed.every(inside)) return [];
  const must = binary ? 'of yes must' : 'of low, of high and of what is left must each';
  const read = Object.values(chance).join(', ');
  return [refused(path, `The chance ${must} lie above 0 and below 1, but ${read} stands here.`, read)];
}

function kindIssues(observable: FaultObservable): Issue[] {
  const { id, kind, otherwise } = observable;
  const path = `observables.${id}.kind`;
  if (kind === 'reading' && 'yes' in otherwise)
    return [refused(path, 'A reading has chances of low and high.')];
  if (kind === 'inspection' && 'low' in otherwise)
    return [refused(path, 'An inspection has a chance of yes.')];
  return [];
}

function repeated(ids: readonly string[]): string[] {
  return ids.filter((id, index) => ids.indexOf(id) !== index);
}

function positive(path: string, value: number): Issue[] {
  if (Number.isFinite(value) && value > 0) return [];
  return [refused(path, `This must be a number above 0, but ${value} stands here.`, String(value))];
}

function rowIssues(model: FaultModel): Issue[] {
  const byId = new Map(model.observables.map((observable) => [observable.id, observable]));
  return model.causes.flatMap((cause) => [
    ...positive(`causes.${cause.id}.weight`, cause.weight),
    ...Object.entries(cause.shows).flatMap(([id, chance]) => {
      const path = `causes.${cause.id}.shows.${id}`;
      const observable = byId.get(id);
      if (observable) return chanceIssues(path, observable, chance);
      return [refused(path, `No symptom, inspection or reading is called "${id}".`, id)];
    }),
  ]);
}

function observableIssues(model: FaultModel): Issue[] {
  return model.observables.flatMap((observable) => [
    ...positive(`observables.${observable.id}.minutes`, observable.minutes),
    ...kindIssues(observable),
    ...chanceIssues(`observables.${observable.id}.otherwise`, observable, observable.otherwise),
  ]);
}

/** Whether some cause makes some other outcome than the usual one much likelier. */
function isExplained(model: FaultModel, observable: FaultObservable): boolean {
  return outcomesOf(observable)
    .filter((outcome) => outcome !== 'no' && outcome !== 'in')
    .some((outcome) =>
      model.causes.some(
        (cause) =>
          cause.shows[observable.id] !== undefined &&
          chanceUnder(cause, observable, outcome) >=
            EXPLAINS_FROM * chanceUnder({ ...cause, shows: {} }, observable, outcome),
      ),
    );
}

/**
 * Tells whether a table of faults can be worked with.
 *
 * Names are unique and known, weights, minutes and cases are above 0, every chance lies above 0 and below 1, and
 * every symptom, inspection and reading is explained: some cause makes it at least 3 times likelier.
 *
 * @param model - the table [record], of any content
 * @returns the table itself, or all that is wrong with it [record]
 * @source none: bookkeeping
 * @example
 * checkFaultModel(FAULT_MODEL).ok // => true
 * checkFaultModel({ ...FAULT_MODEL, weight_cases: 0 }).ok // => false
 */
export function checkFaultModel(model: FaultModel): Outcome<FaultModel> {
  const { observables, causes } = model;
  const issues = [
    ...positive('weight_cases', model.weight_cases),
    ...positive('chance_cases', model.chance_cases),
    ...(causes.length < 2 ? [refused('causes', 'A ranking needs at least two causes.')] : []),
    ...repeated(observables.map(({ id }) => id)).map((id) =>
      refused('observables', `"${id}" is listed twice.`, id),
    ),
    ...repeated(causes.map(({ id }) => id)).map((id) => refused('causes', `"${id}" is listed twice.`, id)),
    ...observableIssues(model),
    ...rowIssues(model),
  ];
  if (issues.length > 0) return { ok: false, issues };
  const unexplained = observables
    .filter((observable) => !isExplained(model, observable))
    .map(({ id }) => refused(`observables.${id}`, `No cause explains "${id}".`, id));
  return unexplained.length > 0 ? { ok: false, issues: unexplained } : { ok: true, value: model };
}

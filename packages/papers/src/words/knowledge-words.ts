import type { Answer } from '@furrow/engine';

/** What a plan's chances rest on: the published rows, or the trials and jobs of a shop. */
export function knowledgeWords({ inputs }: Pick<Answer, 'inputs'>): string {
  const { id, trials, jobs, date, invented } = inputs.knowledge;
  if (date === null)
    return `chances are of the removal law ${inputs.posterior_id}, not of this shop’s own trials`;
  const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
  const whose = invented === true ? 'an invented history' : 'what the shop knows';
  return `chances are of ${whose}, ${id}: ${counted(trials, 'trial')} and ${counted(jobs, 'gauged job')}, the latest of ${date}`;
}

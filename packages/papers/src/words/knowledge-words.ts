import type { Answer } from '@furrow/engine';

/** Words as a sentence of their own. */
export function sentenceOf(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** The same in a word or two, for the foot of a paper. */
export function shortKnowledgeWords({ inputs }: Pick<Answer, 'inputs'>): string {
  return inputs.knowledge.date === null
    ? 'chances of published figures'
    : `chances of ${inputs.knowledge.id}`;
}

/** What a plan's chances rest on: the published rows, or the trials and jobs of a shop. */
export function knowledgeWords({ inputs }: Pick<Answer, 'inputs'>): string {
  const { id, trials, jobs, date, invented } = inputs.knowledge;
  if (date === null) {
    const [, metal = '', position = ''] = inputs.posterior_id.split('/');
    return `chances are of published figures for ${metal.replaceAll('_', ' ')}, ${position.replaceAll('_', ' ')}, not of this shop’s own trials`;
  }
  const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
  const whose = invented === true ? 'an invented history' : 'what the shop knows';
  return `chances are of ${whose}, ${id}: ${counted(trials, 'trial')} and ${counted(jobs, 'gauged job')}, the latest of ${date}`;
}

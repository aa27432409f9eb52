import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

type Broken = Awaited<ReturnType<AxeBuilder['analyze']>>['violations'];

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Rules of WCAG 2.2 AA that a page breaks, each with the nodes that break it; or those of colour alone, which is all that
 * another theme can change. Nothing is framed here, and within the page itself the check is quicker; so it is without a
 * description of every node that keeps to the rules.
 */
export async function brokenRules(page: Page, which: 'all' | 'colours' = 'all'): Promise<Broken> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const rules = which === 'all' ? axe.withTags(RULES) : axe.withRules('color-contrast');
  return (await rules.analyze()).violations;
}

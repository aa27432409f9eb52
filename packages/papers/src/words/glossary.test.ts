import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { GLOSSARY } from './glossary.ts';

const readme = readFileSync(new URL('../../../../README.md', import.meta.url), 'utf8').replace(/\s+/gu, ' ');

it('stands in the README word for word', () => {
  for (const { term, meaning } of GLOSSARY) expect(readme).toContain(`**${term}**: ${meaning}`);
});

it('is in the order of the alphabet, each term once', () => {
  const terms = GLOSSARY.map(({ term }) => term);
  expect(terms).toEqual([...new Set(terms)].sort((a, b) => a.localeCompare(b, 'en')));
});

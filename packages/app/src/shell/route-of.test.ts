import { describe, expect, it } from 'vitest';
import { demoPath, jobPath } from '../ui/route/index.ts';
import { PAGES, PLACES } from './page-table.ts';
import { routeOf } from './route-of.ts';

function shown(path: string): { page: string; id?: string; demo?: string } | undefined {
  const route = routeOf(path);
  return route && { page: route.page.title, ...route.job };
}

describe('routeOf', () => {
  it('knows the bench of the demo job, of a saved job and of any demo job', () => {
    expect(shown('/')).toEqual({ page: 'Bench' });
    expect(shown(jobPath('a b'))).toEqual({ page: 'Bench', id: 'a b' });
    expect(shown(`${demoPath('casting-wash')}/`)).toEqual({ page: 'Bench', demo: 'casting-wash' });
  });

  it.each(PAGES.filter(({ end }) => end !== '').map((page) => [page.title, page] as const))(
    'knows the page %s',
    (title, { of, end }) => {
      const job = of === 'shop' ? undefined : shown(`${jobPath('a b')}/${end}`);
      const demo = shown(`/demo/casting-wash/${end}/`);
      if (of === 'shop') expect(shown(`/${end}`)).toEqual({ page: title });
      else expect(job).toEqual({ page: title, id: 'a b' });
      expect(demo).toEqual(of === 'job' ? { page: title, demo: 'casting-wash' } : undefined);
    },
  );

  it('says so where there is no page, and stands an address that is not well written', () => {
    for (const path of [
      '/jobs/1/2',
      '/jobs/1/heat/2',
      '/demo',
      '/heat',
      '/jobs//heat',
      '/demo/casting-wash/cold',
    ])
      expect(shown(path), path).toBeUndefined();
    expect(shown('/jobs/%E0%A4')).toEqual({ page: 'Bench', id: '%E0%A4' });
  });
});

it('every place has pages, and no two pages have one address', () => {
  for (const { place } of PLACES) expect(PAGES.some((page) => page.place === place)).toBe(true);
  const ends = PAGES.map(({ of, end }) => (of === 'shop' ? `/${end}` : end));
  expect(new Set(ends).size).toBe(ends.length);
});

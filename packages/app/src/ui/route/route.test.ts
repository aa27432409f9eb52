import { describe, expect, it } from 'vitest';
import { demoPath, jobPath, routeOf } from './route.ts';

describe('routeOf', () => {
  it('knows the pages of the app', () => {
    expect(routeOf('/')).toEqual({ page: 'bench' });
    expect(routeOf('/jobs/')).toEqual({ page: 'jobs' });
    expect(routeOf(jobPath('a b'))).toEqual({ page: 'bench', id: 'a b' });
    expect(routeOf(demoPath('casting-wash'))).toEqual({ page: 'bench', demo: 'casting-wash' });
  });

  it('knows the pages of power and air, of a saved job and of a demo job', () => {
    expect(routeOf('/kit')).toEqual({ page: 'kit' });
    expect(routeOf(`${jobPath('a b')}/supply`)).toEqual({ page: 'supply', id: 'a b' });
    expect(routeOf(`${demoPath('casting-wash')}/bay/`)).toEqual({ page: 'bay', demo: 'casting-wash' });
  });

  it('knows the page of heat, of a saved job and of a demo job', () => {
    expect(routeOf(`${jobPath('a b')}/heat`)).toEqual({ page: 'heat', id: 'a b' });
    expect(routeOf('/demo/casting-wash/heat')).toEqual({ page: 'heat', demo: 'casting-wash' });
    expect(routeOf('/demo/casting-wash/cold')).toEqual({ page: 'unknown' });
  });

  it('knows the page of a rig, of saved jobs alone', () => {
    expect(routeOf(`${jobPath('a b')}/commission`)).toEqual({ page: 'commission', id: 'a b' });
    expect(routeOf('/demo/casting-wash/commission')).toEqual({ page: 'unknown' });
  });

  it('says so where there is no page, and stands an address that is not well written', () => {
    expect(routeOf('/jobs/1/2')).toEqual({ page: 'unknown' });
    expect(routeOf('/jobs/%E0%A4')).toEqual({ page: 'bench', id: '%E0%A4' });
  });
});

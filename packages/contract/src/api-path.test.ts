import { describe, expect, expectTypeOf, it } from 'vitest';
import { API_PATHS, fillPath, type PathParameters } from './api-path.ts';

describe('fillPath', () => {
  it('fills every parameter in and escapes what could leave its place', () => {
    expect(fillPath(API_PATHS.job, { id: 'a/b?c' })).toBe('/api/jobs/a%2Fb%3Fc');
    expect(fillPath(API_PATHS.jobRevision, { id: 'x', number: 3 })).toBe('/api/jobs/x/revisions/3');
    expect(fillPath(API_PATHS.jobCardPdf, { id: 'x' })).toBe('/api/jobs/x/card.pdf');
  });

  it('asks in its type for the parameters of the address and no others', () => {
    expectTypeOf<keyof PathParameters<typeof API_PATHS.jobRevision>>().toEqualTypeOf<'id' | 'number'>();
    expectTypeOf<keyof PathParameters<typeof API_PATHS.jobCardPdf>>().toEqualTypeOf<'id'>();
    expectTypeOf<keyof PathParameters<typeof API_PATHS.plan>>().toEqualTypeOf<never>();
  });

  it('leaves no two resources at one address', () => {
    const paths = Object.values(API_PATHS);
    expect(new Set(paths).size).toBe(paths.length);
  });
});

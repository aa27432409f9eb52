import { ISSUE_CODES } from '@furrow/engine';
import { describe, expect, it } from 'vitest';
import { HTTP_STATUS } from './http-status.ts';

describe('HTTP_STATUS', () => {
  it('gives every code of the one table a status, and no other code', () => {
    expect(Object.keys(HTTP_STATUS).sort()).toEqual(Object.keys(ISSUE_CODES).sort());
  });

  it('answers what a person can mend with a 4xx status and what they cannot with a 5xx one', () => {
    const beyondThePerson = [
      'PORT_UNAVAILABLE',
      'PROGRAM_FAULT',
      'STORE_FULL',
      'STORE_HISTORY',
      'STORE_IN_DOUBT',
      'STORE_UNAVAILABLE',
      'WORK_BUSY',
      'WORK_STOPPED',
    ];
    for (const [code, status] of Object.entries(HTTP_STATUS)) {
      expect(status >= 500, code).toBe(beyondThePerson.includes(code));
      expect(status, code).toBeGreaterThanOrEqual(400);
    }
  });
});

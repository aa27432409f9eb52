import { StoreFailure } from '@furrow/store';
import { describe, expect, it } from 'vitest';
import { errorReply } from './error-body.ts';
import { Refused } from './refused.ts';

describe('errorReply', () => {
  it('gives a refusal the status of its code', () => {
    const issue = { code: 'JOB_SYNTAX', message: 'Line 1.', path: '' } as const;
    expect(errorReply(new Refused('JOB_NOT_READABLE', 'one thing', { issues: [issue] }))).toEqual({
      status: 422,
      body: { code: 'JOB_NOT_READABLE', message: 'one thing', issues: [issue] },
      fault: false,
    });
  });

  it('says that the store cannot be reached', () => {
    expect(errorReply(new StoreFailure('STORE_UNAVAILABLE', 'The disk is full.'))).toEqual({
      status: 503,
      body: { code: 'STORE_UNAVAILABLE', message: 'The disk is full.' },
      fault: false,
    });
  });

  it('keeps what a bug threw to the log', () => {
    for (const thrown of [new Error('secret at line 3'), 'secret', undefined, null, { statusCode: 500 }]) {
      const reply = errorReply(thrown);
      expect(reply).toMatchObject({ status: 500, fault: true, body: { code: 'PROGRAM_FAULT' } });
      expect(JSON.stringify(reply.body)).not.toContain('secret');
    }
  });
});

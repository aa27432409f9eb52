import { type ErrorBody, HTTP_STATUS, REQUEST_BYTES_MOST } from '@furrow/contract';
import type { IssueCode } from '@furrow/engine';
import { StoreFailure } from '@furrow/store';
import type { FastifyError } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { boundedIssues, boundedText } from './bounded.ts';
import { Refused } from './refused.ts';

/** What is answered to an error: the status, the body, and whether it is a bug that has to be told of. */
export interface ErrorReply {
  readonly status: number;
  readonly body: ErrorBody;
  readonly fault: boolean;
}

/** Turns whatever a request ran into into an answer with a code of the one table, never with a stack trace. */
export function errorReply(error: unknown): ErrorReply {
  if (error instanceof Refused) {
    const { issues } = error.more;
    return reply(error.code, error.message, issues === undefined ? {} : { issues: boundedIssues(issues) });
  }
  if (error instanceof StoreFailure) return reply(error.code, error.message);
  if (hasZodFastifySchemaValidationErrors(error)) return reply('REQUEST_INVALID', validationMessage(error));
  const { statusCode, code, message } = (error ?? {}) as Partial<FastifyError>;
  if (statusCode === 413) {
    const most = `${REQUEST_BYTES_MOST / 1024} kB`;
    return reply('REQUEST_TOO_LARGE', `The request is too large: at most ${most} are taken.`);
  }
  if (statusCode === 415) {
    return reply('REQUEST_MEDIA_TYPE', 'The content must be sent as JSON (Content-Type: application/json).');
  }
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    const syntax = code === 'FST_ERR_CTP_INVALID_JSON_BODY' || error instanceof SyntaxError;
    const what = syntax ? 'The content is not valid JSON.' : `The request is not accepted: ${message}`;
    return reply('REQUEST_INVALID', what);
  }
  return {
    ...reply(
      'PROGRAM_FAULT',
      'The program went wrong while it worked on this; nothing was saved. Please report it.',
    ),
    fault: true,
  };
}

function reply(code: IssueCode, message: string, more: Omit<ErrorBody, 'code' | 'message'> = {}): ErrorReply {
  return { status: HTTP_STATUS[code], body: { code, message: boundedText(message), ...more }, fault: false };
}

function validationMessage(error: FastifyError): string {
  const found = (error.validation ?? []).map(({ instancePath, message }) => {
    const field = instancePath.replace(/^\//, '').replaceAll('/', '.');
    return field === '' ? message : `${field}: ${message}`;
  });
  return `The request is not accepted (${error.validationContext ?? 'content'}): ${found.join('; ')}.`;
}

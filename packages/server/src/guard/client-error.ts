import type { Socket } from 'node:net';
import type { ErrorBody } from '@furrow/contract';

/** Answers what is not even HTTP, or HTTP with oversized headers, in the form of every other error. */
export function answerClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  const { status, body } = answerTo(error.code);
  const text = JSON.stringify(body);
  socket.write(
    `HTTP/1.1 ${status}\r\nContent-Type: application/json; charset=utf-8\r\n` +
      `Content-Length: ${Buffer.byteLength(text)}\r\nConnection: close\r\n\r\n${text}`,
  );
  // Ended only, a connection stays for as long as the other side goes on sending.
  socket.destroySoon();
}

function answerTo(code: string | undefined): { readonly status: string; readonly body: ErrorBody } {
  switch (code) {
    case 'HPE_HEADER_OVERFLOW':
      return {
        status: '431 Request Header Fields Too Large',
        body: { code: 'REQUEST_TOO_LARGE', message: 'The headers of the request are too large.' },
      };
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return {
        status: '408 Request Timeout',
        body: { code: 'REQUEST_INVALID', message: 'The request did not come in whole within its time.' },
      };
    default:
      return {
        status: '400 Bad Request',
        body: { code: 'REQUEST_INVALID', message: 'The request is not valid HTTP.' },
      };
  }
}

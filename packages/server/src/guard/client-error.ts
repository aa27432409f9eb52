import type { Socket } from 'node:net';
import type { ErrorBody } from '@furrow/contract';

/** Answers what is not even HTTP, or HTTP with oversized headers, in the form of every other error. */
export function answerClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || !socket.writable) {
    socket.destroy();
    return;
  }
  const tooLarge = error.code === 'HPE_HEADER_OVERFLOW';
  const body: ErrorBody = tooLarge
    ? { code: 'REQUEST_TOO_LARGE', message: 'The headers of the request are too large.' }
    : { code: 'REQUEST_INVALID', message: 'The request is not valid HTTP.' };
  const text = JSON.stringify(body);
  const status = tooLarge ? '431 Request Header Fields Too Large' : '400 Bad Request';
  socket.end(
    `HTTP/1.1 ${status}\r\nContent-Type: application/json; charset=utf-8\r\n` +
      `Content-Length: ${Buffer.byteLength(text)}\r\nConnection: close\r\n\r\n${text}`,
  );
}

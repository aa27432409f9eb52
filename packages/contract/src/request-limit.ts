/** Greatest size of the body of a request [bytes]. */
export const REQUEST_BYTES_MOST = 256 * 1024;

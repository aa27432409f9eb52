/** Greatest size of the body of a request [bytes]. */
export const REQUEST_BYTES_MOST = 1024 * 1024;

/** Greatest size of the body of a request [bytes]. */
export const REQUEST_BYTES_MOST = 1024 * 1024;

/** Greatest size of the file of a run [bytes]. */
export const ORIGINAL_BYTES_MOST = 8 * 1024 * 1024 * 1024;

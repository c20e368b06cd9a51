// Which reader wrote a reading: stored with every mark, so that a mark can be explained later.

/** Raised whenever some text may be read otherwise than before. */
export const READER_VERSION = 5;

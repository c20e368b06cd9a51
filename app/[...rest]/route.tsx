import { notFound } from '../_http/not-found.ts';

/** Every address that is not ours, whatever is asked of it. */
export { notFound as GET, notFound as POST, notFound as PUT, notFound as PATCH, notFound as DELETE };

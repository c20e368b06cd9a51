import { watchVerification } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { findHost } from '../../../../_auth/require-host.ts';
import { jsonReply } from '../../../../_http/replies.ts';

interface Place {
  readonly params: Promise<{ readonly id: string }>;
}

/** Numbers of the running work, asked for once a second by the page. */
export async function GET(_request: Request, { params }: Place): Promise<Response> {
  const host = await findHost();
  if (host === null) return jsonReply({ error: 'not-signed-in' }, { status: 401, keeping: 'nobody' });
  const progress = await watchVerification(host.showId, Number((await params).id));
  if (progress === null) return jsonReply({ error: 'not-found' }, { status: 404, keeping: 'nobody' });
  return jsonReply(progress, { keeping: 'nobody' });
}

import { watchRegrade } from '#lib/usecases/answers/show-regrade.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { findHost } from '../../../../../_auth/require-host.ts';
import { jsonReply } from '../../../../../_http/replies.ts';

interface Place {
  readonly params: Promise<{ readonly id: string }>;
}

/** How far a regrade has come, asked for once a second by its page. */
export async function GET(_request: Request, { params }: Place): Promise<Response> {
  const host = await findHost();
  if (host === null) return jsonReply({ error: 'not-signed-in' }, { status: 401, keeping: 'nobody' });
  const opened = await openDeskPuzzle(host.showId, Number((await params).id));
  if (opened === null) return jsonReply({ error: 'not-found' }, { status: 404, keeping: 'nobody' });
  const progress = await watchRegrade(opened.record.id);
  return jsonReply({ ...progress, nodes: 0, verdicts: 0 }, { keeping: 'nobody' });
}

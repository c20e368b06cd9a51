import { troublePage } from '../_ui/trouble-page.tsx';
import { htmlReply, jsonReply } from './replies.ts';
import { viewerOf, wantsJson } from './viewer.ts';

/** Our own 404: the same bytes for nonsense, for drafts and for what is not yet open. */
export async function notFound(request: Request): Promise<Response> {
  const keeping = { seconds: 10 };
  if (wantsJson(request)) return jsonReply({ error: 'not-found' }, { status: 404, keeping });
  const page = await troublePage({ viewer: viewerOf(request), code: 'not-found', kept: null });
  return htmlReply(page, { status: 404, keeping });
}

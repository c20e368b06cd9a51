import { showFrontPage } from '#lib/usecases/puzzles/show-front-page.ts';
import { careful } from './_http/careful.ts';
import { htmlReply, jsonReply, untilChange } from './_http/replies.ts';
import { viewerOf, wantsJson } from './_http/viewer.ts';
import { frontPage } from './_ui/front-page.tsx';

/** The first page; as JSON, the public views of its puzzles. */
export const GET = careful(async (request: Request) => {
  const viewer = viewerOf(request);
  const shown = await showFrontPage({ locale: viewer.locale });
  const keeping = untilChange(
    shown.now,
    shown.open.map((puzzle) => puzzle.closesAt),
  );
  if (wantsJson(request)) return jsonReply(shown, { keeping });
  return htmlReply(await frontPage({ viewer, ...shown }), { keeping });
});

import { config } from '#lib/machine/config.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { careful } from '../../_http/careful.ts';
import { notFound } from '../../_http/not-found.ts';
import { htmlReply, jsonReply, untilChange } from '../../_http/replies.ts';
import { viewerOf, wantsJson } from '../../_http/viewer.ts';
import { puzzlePage } from '../../_ui/puzzle-page.tsx';

type Context = { params: Promise<{ slug: string }> };

/** The puzzle page; as JSON, the same public view. */
export const GET = careful(async (request: Request, context: Context) => {
  const { slug } = await context.params;
  const viewer = viewerOf(request);
  const shown = await showPublicPuzzle({ slug, locale: viewer.locale });
  if (!shown.ok) return notFound(request);
  const { puzzle, now } = shown.value;
  const keeping = untilChange(now, [puzzle.opensAt, puzzle.closesAt]);
  if (wantsJson(request)) return jsonReply(puzzle, { keeping });
  return htmlReply(await puzzlePage({ puzzle, now, viewer, siteAddress: config().publicUrl }), { keeping });
});

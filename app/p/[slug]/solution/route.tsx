import { showSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { careful } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { wholeNumber } from '../../../_http/numbers.ts';
import { htmlReply, jsonReply } from '../../../_http/replies.ts';
import { viewerOf, wantsJson } from '../../../_http/viewer.ts';
import { solutionPage } from '../../../_ui/solution-page.tsx';

type Context = { params: Promise<{ slug: string }> };

/** The solution; before the reveal the same 404 as for nonsense, whatever is asked. */
export const GET = careful(async (request: Request, context: Context) => {
  const { slug } = await context.params;
  const search = new URL(request.url).searchParams;
  const viewer = viewerOf(request);
  const shown = await showSolution({ slug, locale: viewer.locale, asks: search.get('try') });
  if (!shown.ok) return notFound(request);
  const keeping = { seconds: 60 };
  if (wantsJson(request)) return jsonReply(shown.value, { keeping });
  const [line, ply] = [wholeNumber(search.get('line')), wholeNumber(search.get('ply'))];
  const other = wholeNumber(search.get('other'));
  const at = line === null || ply === null ? null : { line, ply, other };
  return htmlReply(await solutionPage({ viewer, shown: shown.value, at }), { keeping });
});

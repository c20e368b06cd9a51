import { showStandings } from '#lib/usecases/standings/show-standings.ts';
import { careful } from '../_http/careful.ts';
import { notFound } from '../_http/not-found.ts';
import { wholeNumber } from '../_http/numbers.ts';
import { htmlReply, jsonReply } from '../_http/replies.ts';
import { viewerOf, wantsJson } from '../_http/viewer.ts';
import { parsePlace, standingsPage } from '../_ui/standings-page.tsx';

/** Standings of a season or an episode, a page at a time. */
export const GET = careful(async (request: Request) => {
  const search = new URL(request.url).searchParams;
  const viewer = viewerOf(request);
  const [season, episode] = [wholeNumber(search.get('season')), wholeNumber(search.get('episode'))];
  const after = parsePlace(search.get('after'));
  const shown = await showStandings({
    ...(season === null ? {} : { season }),
    ...(episode === null ? {} : { episode }),
    ...(after === null ? {} : { after }),
  });
  if (!shown.ok) return notFound(request);
  const keeping = { seconds: 30 };
  if (wantsJson(request)) return jsonReply(shown.value, { keeping });
  return htmlReply(await standingsPage({ viewer, shown: shown.value, isFirst: after === null }), { keeping });
});

import { showFrontPage } from '#lib/usecases/puzzles/show-front-page.ts';
import { careful } from '../_http/careful.ts';
import { htmlReply } from '../_http/replies.ts';
import { viewerOf } from '../_http/viewer.ts';
import { rulesPage } from '../_ui/rules-page.tsx';

/** How answers are read and marked, in short, and what is kept of a viewer. */
export const GET = careful(async (request: Request) => {
  const viewer = viewerOf(request);
  const { showName } = await showFrontPage({ locale: viewer.locale });
  return htmlReply(await rulesPage({ viewer, showName }), { keeping: { seconds: 60 } });
});

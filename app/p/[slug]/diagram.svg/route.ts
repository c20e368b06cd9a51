import { careful } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { drawPublicDiagram } from '../../../_http/public-diagram.ts';
import { pictureReply } from '../../../_http/replies.ts';

type Context = { params: Promise<{ slug: string }> };

/** The diagram as SVG. */
export const GET = careful(async (request: Request, context: Context) => {
  const drawn = await drawPublicDiagram(request, (await context.params).slug);
  return drawn === null ? notFound(request) : pictureReply(drawn.svg, 'image/svg+xml', drawn.keeping);
});

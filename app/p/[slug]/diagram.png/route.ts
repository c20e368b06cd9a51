import { rasterise } from '#lib/machine/rasterise.ts';
import { careful } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { drawPublicDiagram } from '../../../_http/public-diagram.ts';
import { pictureReply } from '../../../_http/replies.ts';

type Context = { params: Promise<{ slug: string }> };

const WIDTH = 1080;

/** The diagram as PNG, one size for everybody. */
export const GET = careful(async (request: Request, context: Context) => {
  const drawn = await drawPublicDiagram(request, (await context.params).slug);
  if (drawn === null) return notFound(request);
  return pictureReply(rasterise(drawn.svg, { width: WIDTH }), 'image/png', drawn.keeping);
});

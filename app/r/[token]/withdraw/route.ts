import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { careful } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { readForm } from '../../../_http/read-form.ts';
import { refusedBody, refusedOrigin } from '../../../_http/refusals.ts';
import { jsonReply, seeOther } from '../../../_http/replies.ts';
import { isFromOwnPage } from '../../../_http/same-origin.ts';
import { linkFor, viewerOf, wantsJson } from '../../../_http/viewer.ts';

type Context = { params: Promise<{ token: string }> };

/** Takes an answer back: text and name are erased. */
export const POST = careful(async (request: Request, context: Context) => {
  const { token } = await context.params;
  const body = await readForm(request);
  if (!body.ok) return refusedBody(request, body.reason);
  if (!isFromOwnPage(request, body.value.isJson)) return refusedOrigin(request);
  const viewer = viewerOf(request, body.value.fields.get('lang'));
  const withdrawn = await withdrawAnswer({ token });
  if (!withdrawn.ok) return notFound(request);
  if (wantsJson(request)) return jsonReply(withdrawn.value, { keeping: 'nobody' });
  return seeOther(linkFor(viewer, `/r/${token}`));
});

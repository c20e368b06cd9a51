import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { answerFields } from '../../../_http/answer-fields.ts';
import { careful, replyToFailure } from '../../../_http/careful.ts';
import { deviceOf } from '../../../_http/device-cookie.ts';
import { readForm } from '../../../_http/read-form.ts';
import { refusedBody, refusedOrigin } from '../../../_http/refusals.ts';
import { refuseAnswer } from '../../../_http/refuse-answer.ts';
import { jsonReply, seeOther } from '../../../_http/replies.ts';
import { isFromOwnPage } from '../../../_http/same-origin.ts';
import { linkFor, viewerOf, wantsJson } from '../../../_http/viewer.ts';

type Context = { params: Promise<{ slug: string }> };

/** Stores an answer and leads to its receipt. */
export const POST = careful(async (request: Request, context: Context) => {
  const { slug } = await context.params;
  const body = await readForm(request);
  if (!body.ok) return refusedBody(request, body.reason);
  if (!isFromOwnPage(request, body.value.isJson)) return refusedOrigin(request);
  const viewer = viewerOf(request, body.value.fields.get('lang'));
  const answer = answerFields(body.value);
  const device = deviceOf(request);
  try {
    const locale = request.headers.get('accept-language') === null ? null : viewer.locale;
    const done = await submitAnswer({ ...answer, slug, device: device.token, signin: null, locale });
    if (!done.ok) return await refuseAnswer(request, { slug, viewer, answer, reason: done.reason });
    const { token, receivedAt, isLate, isRepeat } = done.value;
    const receipt = linkFor(viewer, `/r/${token}`);
    const reply = wantsJson(request)
      ? jsonReply({ receipt, token, receivedAt, isLate }, { keeping: 'nobody', status: isRepeat ? 200 : 201 })
      : seeOther(receipt);
    if (device.setCookie !== null) reply.headers.set('Set-Cookie', device.setCookie);
    return reply;
  } catch (error) {
    const fields = Object.fromEntries(body.value.fields);
    return replyToFailure(request, error, { action: `/p/${slug}/answer`, fields });
  }
});

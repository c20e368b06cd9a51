import { askSecondLook } from '#lib/usecases/answers/ask-second-look.ts';
import { careful } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { readForm } from '../../../_http/read-form.ts';
import { refusedBody, refusedOrigin } from '../../../_http/refusals.ts';
import { refuseLook, refuseWords } from '../../../_http/refuse-look.ts';
import { jsonReply, seeOther } from '../../../_http/replies.ts';
import { isFromOwnPage } from '../../../_http/same-origin.ts';
import { linkFor, viewerOf, wantsJson } from '../../../_http/viewer.ts';

type Context = { params: Promise<{ token: string }> };

/** Asks for a second look at the mark, once and after the reveal. */
export const POST = careful(async (request: Request, context: Context) => {
  const { token } = await context.params;
  const body = await readForm(request);
  if (!body.ok) return refusedBody(request, body.reason);
  if (!isFromOwnPage(request, body.value.isJson)) return refusedOrigin(request);
  const { fields, json } = body.value;
  const viewer = viewerOf(request, fields.get('lang'));
  if (hasWordsOfAnotherKind(json)) return refuseWords(viewer);
  const words = fields.get('words') ?? '';
  const asked = await askSecondLook({ token, words });
  if (!asked.ok) {
    if (asked.reason.code === 'unknown-receipt') return notFound(request);
    return refuseLook(request, { token, viewer, words, reason: asked.reason });
  }
  const receipt = linkFor(viewer, `/r/${token}`, {}, '#second-look');
  if (wantsJson(request)) return jsonReply({ receipt }, { keeping: 'nobody', status: 201 });
  return seeOther(receipt);
});

// A form has text alone. Without the field no words are given; `{"words": ["..."]}` is a mistake that would lose them.
function hasWordsOfAnotherKind(json: unknown): boolean {
  if (typeof json !== 'object' || json === null || !('words' in json)) return false;
  return typeof json.words !== 'string';
}

import { readBack } from '#lib/usecases/answers/read-back.ts';
import { LONGEST_TEXT } from '#lib/usecases/answers/submit-answer.ts';
import { say } from '#lib/words/format.ts';
import { seenOf } from '../../../_http/answer-fields.ts';
import { careful, replyToFailure } from '../../../_http/careful.ts';
import { notFound } from '../../../_http/not-found.ts';
import { readBackJson } from '../../../_http/read-back-json.ts';
import { readForm } from '../../../_http/read-form.ts';
import { refusedBody } from '../../../_http/refusals.ts';
import { htmlReply, jsonReply, seeOther } from '../../../_http/replies.ts';
import { linkFor, viewerOf, wantsJson } from '../../../_http/viewer.ts';
import { checkPage } from '../../../_ui/check-page.tsx';

type Context = { params: Promise<{ slug: string }> };

/** Reads a text back and stores nothing: the check page, or the readings as JSON. */
export const POST = careful(async (request: Request, context: Context) => {
  const { slug } = await context.params;
  const body = await readForm(request);
  if (!body.ok) return refusedBody(request, body.reason);
  const { fields } = body.value;
  const text = fields.get('text') ?? '';
  if (text.length > LONGEST_TEXT) return refusedBody(request, { code: 'too-large', mostBytes: LONGEST_TEXT });
  const viewer = viewerOf(request, fields.get('lang'));
  const kept = { action: `/p/${slug}/read`, fields: Object.fromEntries(fields) };
  try {
    const done = await readBack({ slug, text, locale: viewer.locale, seen: seenOf(body.value) });
    if (!done.ok) return notFound(request);
    if (wantsJson(request)) return jsonReply(readBackJson(done.value, viewer.locale), { keeping: 'nobody' });
    const page = await checkPage({
      ...done.value,
      viewer,
      text,
      receipt: fields.get('receipt') ?? null,
      name: fields.get('name') ?? '',
      ...(text.trim() === '' ? { problem: say(viewer.locale, 'pages.refused-empty') } : {}),
    });
    return htmlReply(page, { keeping: 'nobody', status: text.trim() === '' ? 422 : 200 });
  } catch (error) {
    return replyToFailure(request, error, kept);
  }
});

/** Somebody reloads the check page or comes back to it: on to the puzzle. */
export const GET = careful(async (request: Request, context: Context) => {
  const { slug } = await context.params;
  return seeOther(linkFor(viewerOf(request), `/p/${encodeURIComponent(slug)}`));
});

import { REMARK_CHARACTERS } from '#lib/kit/short-text.ts';
import { config } from '#lib/machine/config.ts';
import type { AskLookReason } from '#lib/usecases/answers/ask-second-look.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { receiptPage } from '../_ui/receipt-page.tsx';
import { notFound } from './not-found.ts';
import { htmlReply, jsonReply } from './replies.ts';
import { type Viewer, wantsJson } from './viewer.ts';

type Reason = Exclude<AskLookReason, { readonly code: 'unknown-receipt' }>;

/** Says why no second look was asked for: the receipt again with everything that was typed, or JSON. */
export async function refuseLook(
  request: Request,
  refused: { token: string; viewer: Viewer; words: string; reason: Reason },
): Promise<Response> {
  const { token, viewer, words, reason } = refused;
  const status = reason.code === 'too-long' ? 422 : 409;
  const problem = sentenceFor(reason, viewer.locale);
  if (wantsJson(request))
    return jsonReply({ error: reason.code, reason, message: problem }, { status, keeping: 'nobody' });
  const shown = await showReceipt({ token, locale: viewer.locale });
  if (!shown.ok) return notFound(request);
  const siteAddress = config().publicUrl;
  const refusedLook = { problem, words };
  const page = await receiptPage({ viewer, token, siteAddress, shown: shown.value, refusedLook });
  return htmlReply(page, { status, keeping: 'nobody', isSecret: true });
}

/** Says what was expected where the words came in JSON and are no text; nothing is kept and the look stays open. */
export function refuseWords({ locale }: Viewer): Response {
  const message = say(locale, 'pages.refused-look-not-text', { most: REMARK_CHARACTERS });
  const reason = { code: 'not-text', field: 'words', expected: 'text' };
  return jsonReply({ error: reason.code, reason, message }, { status: 400, keeping: 'nobody' });
}

function sentenceFor(reason: Reason, locale: Locale): string {
  return reason.code === 'too-long'
    ? say(locale, 'pages.refused-look-too-long', { length: reason.length, most: reason.most })
    : say(locale, `pages.refused-look-${reason.code}`);
}

import { exhaustive } from '#lib/kit/exhaustive.ts';
import type { NameReason } from '#lib/people/names.ts';
import { readBack } from '#lib/usecases/answers/read-back.ts';
import type { SubmitReason } from '#lib/usecases/answers/submit-answer.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { checkPage } from '../_ui/check-page.tsx';
import type { AnswerFields } from './answer-fields.ts';
import { notFound } from './not-found.ts';
import { htmlReply, jsonReply } from './replies.ts';
import { type Viewer, wantsJson } from './viewer.ts';

/** Says why an answer was not taken: the check page again with everything that was written, or JSON. */
export async function refuseAnswer(
  request: Request,
  refused: { slug: string; viewer: Viewer; answer: AnswerFields; reason: SubmitReason },
): Promise<Response> {
  const { slug, viewer, answer, reason } = refused;
  if (reason.code === 'unknown-puzzle' || reason.code === 'not-open-yet') return notFound(request);
  const status = statusOf(reason);
  const problem = sentenceFor(reason, viewer.locale);
  if (wantsJson(request))
    return jsonReply({ error: reason.code, reason, message: problem }, { status, keeping: 'nobody' });
  const read = await readBack({ slug, text: answer.text, locale: viewer.locale, seen: answer.seen });
  if (!read.ok) return notFound(request);
  const page = await checkPage({
    ...read.value,
    viewer,
    text: answer.text,
    receipt: answer.receipt,
    name: answer.name,
    problem,
  });
  return htmlReply(page, { status, keeping: 'nobody' });
}

function statusOf(reason: Exclude<SubmitReason, { code: 'unknown-puzzle' | 'not-open-yet' }>): number {
  switch (reason.code) {
    case 'over':
    case 'key-used-for-another':
      return 409;
    case 'text-too-long':
      return 413;
    case 'bad-client-key':
      return 400;
    case 'text-empty':
    case 'meant-not-read':
    case 'name':
      return 422;
    default:
      return exhaustive(reason);
  }
}

function sentenceFor(
  reason: Exclude<SubmitReason, { code: 'unknown-puzzle' | 'not-open-yet' }>,
  locale: Locale,
): string {
  switch (reason.code) {
    case 'over':
      return say(locale, reason.state === 'void' ? 'pages.void' : 'pages.refused-over');
    case 'key-used-for-another':
      return say(locale, 'pages.refused-key-used');
    case 'text-too-long':
      return say(locale, 'pages.refused-too-long', { length: reason.length, most: reason.most });
    case 'bad-client-key':
      return say(locale, 'pages.refused-key');
    case 'text-empty':
      return say(locale, 'pages.refused-empty');
    case 'meant-not-read':
      return say(locale, 'pages.refused-meant');
    case 'name':
      return nameSentence(reason.reason, locale);
    default:
      return exhaustive(reason);
  }
}

function nameSentence(reason: NameReason, locale: Locale): string {
  switch (reason.code) {
    case 'too-long':
      return say(locale, 'pages.refused-name-too-long', { most: reason.most });
    case 'stacked-marks':
      return say(locale, 'pages.refused-name-marks');
    case 'control-character':
    case 'direction-character':
    case 'invisible-character':
      return say(locale, 'pages.refused-name', { found: reason.codePoint });
    default:
      return exhaustive(reason);
  }
}

import { troublePage } from '../_ui/trouble-page.tsx';
import type { BodyReason } from './read-form.ts';
import { htmlReply, jsonReply } from './replies.ts';
import { viewerOf, wantsJson } from './viewer.ts';

const BODY_STATUS: Readonly<Record<BodyReason['code'], number>> = {
  'too-large': 413,
  'wrong-type': 415,
  'not-json': 400,
};

/** The reply to a body that is not taken: too large, of another type, or no JSON object. */
export async function refusedBody(request: Request, reason: BodyReason): Promise<Response> {
  return refuseWith(request, reason.code, { status: BODY_STATUS[reason.code], details: reason });
}

/** The reply to a form that did not come from a page of ours. */
export async function refusedOrigin(request: Request): Promise<Response> {
  return refuseWith(request, 'foreign-page', { status: 403, details: { code: 'foreign-page' } });
}

async function refuseWith(
  request: Request,
  code: BodyReason['code'] | 'foreign-page',
  { status, details }: { readonly status: number; readonly details: object },
): Promise<Response> {
  if (wantsJson(request)) return jsonReply({ error: code, ...details }, { status, keeping: 'nobody' });
  const page = await troublePage({ viewer: viewerOf(request), code, kept: null });
  return htmlReply(page, { status, keeping: 'nobody' });
}

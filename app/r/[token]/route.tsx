import { config } from '#lib/machine/config.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { careful } from '../../_http/careful.ts';
import { notFound } from '../../_http/not-found.ts';
import { htmlReply, jsonReply } from '../../_http/replies.ts';
import { viewerOf, wantsJson } from '../../_http/viewer.ts';
import { receiptPage } from '../../_ui/receipt-page.tsx';

type Context = { params: Promise<{ token: string }> };

/** A receipt: its address is the key, so nobody may keep or pass on what stands here. */
export const GET = careful(async (request: Request, context: Context) => {
  const { token } = await context.params;
  const viewer = viewerOf(request);
  const shown = await showReceipt({ token, locale: viewer.locale });
  if (!shown.ok) return notFound(request);
  if (wantsJson(request)) return jsonReply(shown.value, { keeping: 'nobody' });
  const page = await receiptPage({ viewer, token, siteAddress: config().publicUrl, shown: shown.value });
  return htmlReply(page, { keeping: 'nobody', isSecret: true });
});

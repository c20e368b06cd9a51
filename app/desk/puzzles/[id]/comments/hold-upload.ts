import type { CommentsUpload } from '#lib/usecases/answers/import-comments.ts';
import { uploadFormatOf } from '#lib/usecases/answers/preview-comments.ts';
import { textOf } from '../../../_parts/form-state.ts';

/** An upload as the form holds it: its bytes, and the same as text, to travel with the next sending. */
export interface Held {
  readonly text: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly format: CommentsUpload['format'];
  readonly fileName: string | null;
}

/** What a form may hold; larger files go through the API or the command line. */
const MOST_BYTES = 8 * 1024 * 1024;

/** The upload in a form: a file just picked, one held from before, or a paste; null where there is none. */
export async function holdUpload(form: FormData): Promise<Held | 'too-large' | null> {
  const file = form.get('file');
  if (file instanceof File && file.size > 0) {
    if (file.size > MOST_BYTES) return 'too-large';
    const bytes = new Uint8Array(await file.arrayBuffer());
    const text = new TextDecoder(bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : 'utf-8').decode(bytes);
    const fileName = file.name.slice(0, 120);
    return { text, bytes, format: uploadFormatOf(fileName, text.slice(0, 2000)), fileName };
  }
  const held = textOf(form, 'held').replace(/\r\n?/g, '\n');
  if (held !== '') {
    const fileName = textOf(form, 'fileName') || null;
    return { text: held, bytes: encoded(held), format: formatOf(textOf(form, 'format')), fileName };
  }
  const paste = textOf(form, 'paste').replace(/\r\n?/g, '\n');
  return paste.trim() === ''
    ? null
    : { text: paste, bytes: encoded(paste), format: 'pasted', fileName: null };
}

/** The columns that the host set; null where the form has no such fields. */
export function columnsOf(form: FormData): CommentsUpload['columns'] {
  const at = (name: string): number | null => {
    const text = textOf(form, `column-${name}`);
    return /^\d{1,3}$/.test(text) ? Number(text) : null;
  };
  const text = at('text');
  if (text === null) return null;
  return { author: at('author'), text, time: at('time'), link: at('link'), id: at('id'), reply: at('reply') };
}

function encoded(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text.toWellFormed());
}

function formatOf(text: string): Held['format'] {
  return text === 'csv' || text === 'tsv' || text === 'jsonl' ? text : 'pasted';
}

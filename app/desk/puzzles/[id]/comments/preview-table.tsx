import type { ReactElement } from 'react';
import type { CommentsWords } from './comments-words.ts';

/** What was read, in words, ready to be shown. */
export interface ShownPreview {
  readonly summary: string;
  readonly refused: readonly string[];
  readonly rows: readonly {
    readonly key: string;
    readonly author: string;
    readonly text: string;
    readonly read: string;
    readonly time: string;
    readonly isKnown: boolean;
  }[];
}

/** What was read of an upload, before anything is stored. */
export function PreviewTable({
  preview,
  words,
}: {
  preview: ShownPreview;
  words: CommentsWords;
}): ReactElement {
  return (
    <section className="stack" aria-live="polite">
      <p>{preview.summary}</p>
      {preview.refused.length === 0 ? null : (
        <ul className="problem plain">
          {preview.refused.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      <div className="scroll-box">
        <table className="preview">
          <thead>
            <tr>
              <th scope="col">{words['head-author']}</th>
              <th scope="col">{words['head-text']}</th>
              <th scope="col">{words['head-read']}</th>
              <th scope="col">{words['head-time']}</th>
            </tr>
          </thead>
          <tbody>
            {preview.rows.map((row) => (
              <tr key={row.key} className={row.isKnown ? 'quiet' : undefined}>
                <th scope="row">
                  <bdi>{row.author}</bdi>
                </th>
                <td className="from-outside" dir="auto">
                  {row.text}
                </td>
                <td className="moves">{row.read}</td>
                <td className="figures">
                  {row.time}
                  {row.isKnown ? ` ${words.known}` : ''}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

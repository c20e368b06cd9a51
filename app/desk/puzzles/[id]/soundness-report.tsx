import type { ReactElement } from 'react';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { unbroken } from '../../../_ui/unbroken.ts';
import { VerificationProgress } from '../../_parts/verification-progress.tsx';

const STAGES = ['keys', 'refutations', 'slower', 'search', 'replies', 'table', 'check', 'lines'] as const;

/** Of a puzzle, or of a correction of it in the making. */
type Reported = Pick<DeskPuzzleView, 'progress' | 'report'> & { readonly record: { readonly id: number } };

/** What verification found, in sentences; while it runs, how far it has come. */
export function SoundnessReport({ view, locale }: { view: Reported; locale: Locale }): ReactElement {
  const { progress, report, record } = view;
  const isRunning = progress?.state === 'waiting' || progress?.state === 'running';
  return (
    <section className="stack" aria-labelledby="soundness">
      <h2 id="soundness">{say(locale, 'desk.soundness')}</h2>
      {isRunning ? (
        <VerificationProgress
          from={`/desk/puzzles/${record.id}/progress`}
          first={progress}
          words={progressWords(locale)}
          locale={locale}
        />
      ) : null}
      {progress?.state === 'failed' ? (
        <p className="problem" role="alert">
          {say(locale, 'desk.progress-failed', { failure: progress.failure ?? '' })}
        </p>
      ) : null}
      {report.map((part) => (
        <div className="report-part" key={part.kind}>
          <h3 className="label red">{say(locale, `desk.report-${part.kind}`)}</h3>
          {part.sentences.length === 1 ? (
            <p>{unbroken(part.sentences[0] ?? '')}</p>
          ) : (
            <ul>
              {part.sentences.map((sentence) => (
                <li key={sentence}>{unbroken(sentence)}</li>
              ))}
            </ul>
          )}
        </div>
      ))}
    </section>
  );
}

/** Sentences of the progress; their numbers are filled in where they change. */
function progressWords(locale: Locale): Readonly<Record<string, string>> {
  const numbers = { done: '{done}', total: '{total}', nodes: '{nodes}', verdicts: '{verdicts}' };
  const words: Record<string, string> = {};
  for (const stage of [
    ...STAGES,
    'waiting',
    'running',
    'done',
    'failed',
    'parts',
    'unknown',
    'label',
  ] as const) {
    words[stage] = say(locale, `desk.progress-${stage}`, { ...numbers, failure: '' });
  }
  return words;
}

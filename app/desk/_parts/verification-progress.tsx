'use client';

import { useRouter } from 'next/navigation';
import { type ReactElement, useEffect, useState } from 'react';

/** The numbers of the running work, as the server tells them. */
export interface Progress {
  readonly state: string;
  readonly stage: string | null;
  readonly done: number;
  readonly total: number;
  readonly nodes: number;
  readonly verdicts: number;
}

interface Input {
  readonly from: string;
  readonly first: Progress;
  /** Sentences by state and stage; `{done}`, `{total}`, `{nodes}`, `{verdicts}` are filled in here. */
  readonly words: Readonly<Record<string, string>>;
  readonly locale: string;
}

const EVERY_MS = 1000;

/** Asks once a second; a sentence with numbers of the work, never a bar that moves by itself. */
export function VerificationProgress({ from, first, words, locale }: Input): ReactElement {
  const [progress, setProgress] = useState(first);
  const router = useRouter();
  const isOver = progress.state === 'done' || progress.state === 'failed';
  useEffect(() => {
    if (isOver) {
      router.refresh();
      return;
    }
    const timer = setInterval(async () => {
      const reply = await fetch(from, { headers: { accept: 'application/json' } }).catch(() => null);
      if (reply?.ok) setProgress(parseProgress(await reply.json()) ?? first);
    }, EVERY_MS);
    return () => clearInterval(timer);
  }, [from, first, isOver, router]);
  const figure = new Intl.NumberFormat(locale);
  const fill = (sentence: string): string =>
    sentence.replace(/\{(done|total|nodes|verdicts)\}/g, (_, name) =>
      figure.format(numberOf(progress, name)),
    );
  const stage = progress.state === 'running' ? (progress.stage ?? 'running') : progress.state;
  return (
    <div className="progress">
      <p aria-live="polite" aria-atomic="true">
        {fill(words[stage] ?? '')}
      </p>
      <p className="hint figures">
        {progress.total > 0 ? fill(words.parts ?? '') : fill(words.unknown ?? '')}
      </p>
      {progress.total > 0 ? (
        <progress value={progress.done} max={progress.total} aria-label={words.label} />
      ) : null}
    </div>
  );
}

function numberOf(progress: Progress, name: string): number {
  if (name === 'done') return progress.done;
  if (name === 'total') return progress.total;
  return name === 'nodes' ? progress.nodes : progress.verdicts;
}

function parseProgress(json: unknown): Progress | null {
  if (typeof json !== 'object' || json === null) return null;
  const number = (key: string): number => Number(Reflect.get(json, key) ?? 0);
  const stage: unknown = Reflect.get(json, 'stage');
  return {
    state: String(Reflect.get(json, 'state')),
    stage: typeof stage === 'string' ? stage : null,
    done: number('done'),
    total: number('total'),
    nodes: number('nodes'),
    verdicts: number('verdicts'),
  };
}

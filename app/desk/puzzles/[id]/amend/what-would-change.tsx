import type { ReactElement } from 'react';
import type { AmendmentView, ShownAmendment, StatedTerms } from '#lib/usecases/puzzles/show-amendment.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { taskHeadline } from '../../../../_ui/puzzle-heads.ts';

interface Input {
  readonly view: AmendmentView;
  readonly amendment: ShownAmendment;
  readonly locale: Locale;
}

/** What stands now beside what would stand, for everything that differs; and the words of the notice. */
export function WhatWouldChange({ view, amendment, locale }: Input): ReactElement {
  const { inForce } = view;
  return (
    <section className="stack" aria-labelledby="changes">
      <h2 id="changes">{say(locale, 'desk.amend-changes')}</h2>
      {amendment.changed.map((change) => (
        <Pair
          key={change}
          label={say(locale, `desk.amend-${change}`)}
          now={wordsOf(change, inForce, locale)}
          then={wordsOf(change, amendment, locale)}
          locale={locale}
        />
      ))}
      {inForce.title === amendment.title ? null : (
        <Pair
          label={say(locale, 'desk.amend-title')}
          now={inForce.title}
          then={amendment.title}
          locale={locale}
        />
      )}
      <div>
        <h3 className="label red">{say(locale, 'desk.amend-note')}</h3>
        <p className="correction-note">
          <bdi>{amendment.note}</bdi>
        </p>
      </div>
    </section>
  );
}

interface PairInput {
  readonly label: string;
  readonly now: string;
  readonly then: string;
  readonly locale: Locale;
}

function Pair({ label, now, then, locale }: PairInput): ReactElement {
  return (
    <div>
      <h3 className="label red">{label}</h3>
      <dl className="change">
        <dt className="label quiet">{say(locale, 'desk.amend-now')}</dt>
        <dd>
          <bdi>{now}</bdi>
        </dd>
        <dt className="label quiet">{say(locale, 'desk.amend-then')}</dt>
        <dd>
          <bdi>{then}</bdi>
        </dd>
      </dl>
    </div>
  );
}

function wordsOf(change: ShownAmendment['changed'][number], stated: StatedTerms, locale: Locale): string {
  const { terms } = stated;
  switch (change) {
    case 'position':
      return terms.fen;
    case 'task':
      return taskHeadline({ turn: terms.fen.split(' ')[1] === 'b' ? 'b' : 'w', task: terms.task }, locale);
    case 'conditions':
      return conditions(terms, locale).join(', ') || say(locale, 'desk.amend-condition-none');
    case 'keys':
      return [
        terms.published.join('\n') || say(locale, 'desk.amend-no-lines'),
        ...bounds(terms, locale),
      ].join('\n');
  }
}

function conditions(terms: StatedTerms['terms'], locale: Locale): string[] {
  const names = (['mateWritten', 'anyDefence', 'isStrict'] as const).filter((name) => terms[name]);
  const words = names.map((name) => say(locale, `desk.amend-condition-${name}`));
  if (terms.solverMoves === null) return words;
  return [...words, say(locale, 'desk.amend-condition-solverMoves', { moves: terms.solverMoves })];
}

// Bounds say something where there is no mate to count by.
function bounds(terms: StatedTerms['terms'], locale: Locale): string[] {
  if (terms.task.kind === 'mate') return [];
  const { winBound: win, slipBound: slip, drawBound: draw, drawSlipBound: drawSlip } = terms;
  return [say(locale, 'desk.amend-bounds-are', { win, slip, draw, drawSlip })];
}

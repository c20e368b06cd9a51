import type { ReactElement, ReactNode } from 'react';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { SolutionLine } from '#lib/usecases/puzzles/solution-lines.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { moveNumber, shortMove } from './board/answer-line.ts';
import { lettersOf } from './piece-letters.ts';
import { stepAt } from './solution-steps.ts';

/** Where a move of a line leads. */
export interface LineLinks {
  /** `other`: one of the replies that stand beside the line's own. */
  to(line: number, ply: number, other?: number): string;
}

interface LinesProps {
  readonly lines: readonly SolutionLine[];
  readonly start: Position;
  readonly at: { readonly line: number; readonly ply: number; readonly other: number | null } | null;
  readonly links: LineLinks;
  readonly locale: Locale;
}

/** Move text as a printed column: every move a link that shows its position, with or without scripts. */
export function PlayableLines(props: LinesProps): ReactElement {
  const { lines, locale } = props;
  const firstOther = lines.findIndex((line) => line.kind === 'other-way');
  return (
    <div className="stack" id="lines">
      {lines.map((line, i) => (
        <div key={line.moves.join(' ')}>
          {i === firstOther ? <p className="label quiet">{say(locale, 'pages.other-ways')}</p> : null}
          <p className="moves movetext">
            <LineMoves {...props} line={line} index={i} />
            {line.isBenefit === true ? (
              <span className="quiet">({say(locale, 'pages.spread-benefit')})</span>
            ) : null}
          </p>
        </div>
      ))}
    </div>
  );
}

function LineMoves(props: LinesProps & { line: SolutionLine; index: number }): ReactNode {
  const { line } = props;
  return line.moves.slice(line.from).map((_, i) => {
    const ply = line.from + i;
    return (
      <span key={`${ply}`}>
        <MoveLink {...props} ply={ply} isFirst={i === 0} />
        {ply === 1
          ? line.sameAs.map((uci, other) => <SameAs key={uci} {...props} uci={uci} other={other} />)
          : null}
      </span>
    );
  });
}

interface SameAsProps extends LinesProps {
  readonly line: SolutionLine;
  readonly index: number;
  readonly uci: string;
  readonly other: number;
}

/** "or 1 … Be8": another reply that the same next move meets, as playable as the rest. */
function SameAs({ line, index, uci, other, start, links, locale }: SameAsProps): ReactElement {
  const moves = [...line.moves.slice(0, 1), uci];
  return (
    <span className="aside">
      {say(locale, 'pages.or')}{' '}
      <a
        href={links.to(index, 2, other)}
        data-fen={writeFen(stepAt(start, moves, moves.length).position)}
        data-uci={uci}
      >
        {textOf(start, moves, locale)}
      </a>{' '}
    </span>
  );
}

interface MoveProps extends LinesProps {
  readonly line: SolutionLine;
  readonly index: number;
  readonly ply: number;
  readonly isFirst: boolean;
}

function MoveLink({ line, index, ply, isFirst, start, at, links, locale }: MoveProps): ReactElement {
  const moves = line.moves.slice(0, ply + 1);
  const after = stepAt(start, moves, moves.length);
  const isSolver = ply % 2 === 0;
  const isWhite = (start.turn === 'w') === isSolver;
  const number = isWhite ? `${moveNumber(start, ply)} ` : isFirst ? `${moveNumber(start, ply)} … ` : '';
  const isCurrent = at?.line === index && at.ply === ply + 1 && at.other === null;
  return (
    <>
      <a
        className={isSolver ? 'solver' : ''}
        href={links.to(index, ply + 1)}
        data-fen={writeFen(after.position)}
        data-uci={line.moves[ply]}
        {...(isCurrent ? { 'aria-current': 'true' as const } : {})}
      >
        {number}
        {textOf(start, moves, locale)}
      </a>{' '}
    </>
  );
}

/** The last move of a line in short notation. */
function textOf(start: Position, moves: readonly string[], locale: Locale): string {
  const before = stepAt(start, moves, moves.length - 1);
  const uci = moves[moves.length - 1] ?? '';
  const move = findUci(before.position, uci);
  return move === null ? uci : shortMove(before.position, move, lettersOf(locale));
}

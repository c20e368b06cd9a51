// What may the public know of a puzzle before the reveal? A type of its own, built by naming what
// goes in (rule T2): a field that is not written down here cannot get out.

import type { PuzzleTerms, SchemeName, Task } from '#lib/book/terms.ts';
import type { Scheme } from '#lib/marking/schemes.ts';
import type { PublicCorrection } from './correction.ts';
import { type PuzzleMoments, type PuzzleState, stateAt } from './puzzle-state.ts';
import { mayBeSeen } from './what-may-be-seen.ts';

/** A puzzle as anybody may see it, in every public state. */
export interface PublicPuzzle {
  readonly slug: string;
  readonly showName: string;
  /** The episode's number as the show counts, null where it does not. */
  readonly episodeNumber: number | null;
  readonly episodeTitle: string;
  readonly title: string;
  readonly fen: string;
  readonly turn: 'w' | 'b';
  readonly task: Task;
  /** The sentence under the task that says how far to write (rule O1); public by its purpose. */
  readonly howFar: string;
  readonly anyDefence: boolean;
  readonly mateWritten: boolean;
  readonly scheme: SchemeName;
  /** The numbers of the scheme; null parts: the first move alone decides. */
  readonly points: Pick<Scheme, 'solved' | 'slower' | 'part'>;
  readonly state: Exclude<PuzzleState, 'draft' | 'verified' | 'published'>;
  readonly opensAt: Date;
  readonly closesAt: Date;
  /** The host's time zone, an IANA name, in which times are said beside the viewer's own. */
  readonly zone: string;
  /** Number of the terms shown, which an answer may name as seen (rule A6). */
  readonly revision: number;
  /** Correction notices, newest first. */
  readonly corrections: readonly PublicCorrection[];
}

/** The stored facts that a public puzzle is made from. Published lines are not among them, on purpose. */
export interface PublicPuzzleFacts extends PuzzleMoments {
  readonly slug: string;
  readonly showName: string;
  readonly episodeNumber: number | null;
  readonly episodeTitle: string;
  readonly title: string;
  readonly howFar: string;
  readonly zone: string;
  readonly scheme: Scheme;
  readonly revision: number;
  readonly corrections: readonly PublicCorrection[];
  readonly terms: Pick<PuzzleTerms, 'fen' | 'task' | 'anyDefence' | 'mateWritten' | 'scheme'>;
}

/**
 * The public's view at a moment, or null where the public may not know that the puzzle exists
 * (drafts, and published ones before their opening): the page then answers as for nonsense.
 */
export function toPublicPuzzle(facts: PublicPuzzleFacts, now: Date): PublicPuzzle | null {
  const state = stateAt(facts, now);
  if (!mayBeSeen('puzzle', 'public', state)) return null;
  if (state === 'draft' || state === 'verified' || state === 'published') return null;
  if (facts.opensAt === null || facts.closesAt === null) return null;
  return {
    slug: facts.slug,
    showName: facts.showName,
    episodeNumber: facts.episodeNumber,
    episodeTitle: facts.episodeTitle,
    title: facts.title,
    fen: facts.terms.fen,
    turn: facts.terms.fen.split(' ')[1] === 'b' ? 'b' : 'w',
    task:
      facts.terms.task.kind === 'mate'
        ? { kind: 'mate', moves: facts.terms.task.moves }
        : { kind: facts.terms.task.kind },
    howFar: facts.howFar,
    anyDefence: facts.terms.anyDefence,
    mateWritten: facts.terms.mateWritten,
    scheme: facts.terms.scheme,
    points: { solved: facts.scheme.solved, slower: facts.scheme.slower, part: facts.scheme.part },
    state,
    opensAt: facts.opensAt,
    closesAt: facts.closesAt,
    zone: facts.zone,
    revision: facts.revision,
    corrections: facts.corrections.map((one) => toPublicCorrection(one, state)),
  };
}

// Rule T2: that a solution was corrected is told along with the solution. Until then such a notice says
// that the puzzle was checked again.
function toPublicCorrection(stored: PublicCorrection, state: PuzzleState): PublicCorrection {
  const { kind, at, note, changed, from, to } = stored;
  const isOut = mayBeSeen('solution', 'public', state);
  return { kind, at, note, changed: changed.filter((one) => one !== 'keys' || isOut), from, to };
}

import { notFound } from 'next/navigation';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import { type DeskPuzzle, openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';

/** Place of a page or handler below one puzzle. */
export interface PuzzlePlace {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

/** The puzzle's number in the address; 0, which no puzzle has, for anything else. */
export function puzzleNumber(id: string): number {
  return /^[1-9]\d{0,8}$/.test(id) ? Number(id) : 0;
}

/** The puzzle of the host's show, or the page that says there is none. */
export async function requirePuzzle(host: Host, id: string): Promise<DeskPuzzle> {
  return (await openDeskPuzzle(host.showId, puzzleNumber(id))) ?? notFound();
}

/** What the frame of a page needs to know of the puzzle. */
export function puzzleForFrame({ record, doubtful }: DeskPuzzle) {
  return { id: record.id, episodeNumber: record.episode.number, doubtful };
}

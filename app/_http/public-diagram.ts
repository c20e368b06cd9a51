import { describePosition } from '#lib/pictures/describe-position.ts';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { taskHeadline } from '../_ui/puzzle-heads.ts';
import { type Keeping, untilChange } from './replies.ts';
import { viewerOf } from './viewer.ts';

/** The diagram of a public puzzle as a picture of its own; null where the public may not know of it. */
export async function drawPublicDiagram(
  request: Request,
  slug: string,
): Promise<{ readonly svg: string; readonly keeping: Keeping } | null> {
  const { locale } = viewerOf(request);
  const shown = await showPublicPuzzle({ slug, locale });
  if (!shown.ok) return null;
  const { puzzle, now } = shown.value;
  const position = parseFen(puzzle.fen);
  if (!position.ok) throw new Error(`not a position: ${puzzle.fen}`);
  const svg = drawDiagram({
    position: position.value,
    title: taskHeadline(puzzle, locale),
    description: describePosition(position.value, locale),
    size: 720,
  });
  return { svg, keeping: untilChange(now, [puzzle.opensAt, puzzle.closesAt]) };
}

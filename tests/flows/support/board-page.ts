// A page of our own making that holds one board and one field, served under the program's address and policy:
// so that the board can be tried on any position.

import type { Page } from '@playwright/test';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { boardEn } from '#lib/words/catalogue/en/board.ts';

/** Opens a board on a position; `origin` is that of the running program, which serves script and style sheet. */
export async function openBoard(page: Page, origin: string, fen: string): Promise<void> {
  const position = parseFen(fen);
  if (!position.ok) throw new Error(`not a position: ${fen}`);
  const front = await (await fetch(`${origin}/standings`)).text();
  const style = /href="(\/built\/public\.[^"]+)"/.exec(front)?.[1] ?? '';
  const puzzle = await (await fetch(`${origin}/p/${await openSlug(origin)}`)).text();
  const script = /src="(\/built\/board\.[^"]+)"/.exec(puzzle)?.[1] ?? '';
  const words = JSON.stringify(boardEn).replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  const svg = drawDiagram({ position: position.value, title: 'A board', allMen: true });
  const html = `<!doctype html><html lang="en"><head><title>A board</title><link rel="stylesheet" href="${style}"><script type="module" src="${script}"></script></head><body><main class="sheet"><figure class="plate"><tailpiece-board data-fen="${fen}" data-mode="answer" data-letters="KQRBN" data-field="answer" data-words="${words}">${svg}</tailpiece-board></figure><label for="answer">Line</label><textarea id="answer"></textarea><p id="so-far" hidden></p></main></body></html>`;
  await page.route(`${origin}/a-board-to-try`, (route) =>
    route.fulfill({
      contentType: 'text/html; charset=utf-8',
      headers: {
        'content-security-policy': "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'",
      },
      body: html,
    }),
  );
  await page.goto(`${origin}/a-board-to-try`);
  await page.getByRole('grid').waitFor();
}

/** The slug of an open puzzle. */
export async function openSlug(origin: string): Promise<string> {
  const reply = await fetch(`${origin}/`, { headers: { accept: 'application/json' } });
  const front: { open: { slug: string }[] } = await reply.json();
  const slug = front.open[0]?.slug;
  if (slug === undefined) throw new Error('no puzzle is open');
  return slug;
}

import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { jsonLines, startTailpiece, tailpiece } from '../support/command-line.ts';
import { START_FEN } from '../support/positions.ts';

const ITALIAN = 'r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4';
const BACK_RANK = '6k1/5ppp/8/8/8/8/5PPP/3RR1K1 w - - 0 1';
const KNIGHTS = '4k3/8/8/8/8/5N2/8/1N2K3 w - - 0 1';

const ask = (id: string | number, fen: string, text: string): string =>
  `${JSON.stringify({ id, fen, text })}\n`;

describe('the answer to a line', () => {
  test.each([
    [
      'a plain line',
      ITALIAN,
      '1.Bxf7+ Kxf7 2.Nxe5+',
      {
        line: ['c4f7', 'e8f7', 'f3e5'],
        branches: [],
        readings: 1,
        solverOnly: false,
        impossibleAt: null,
        kind: 'answer',
      },
    ],
    [
      '[R5] a branch is written out from the start',
      ITALIAN,
      '1.Bxf7+ Kxf7 (1...Kf8 2.Bxg8) 2.Nxe5+',
      { line: ['c4f7', 'e8f7', 'f3e5'], branches: [['c4f7', 'e8f8', 'f7g8']], readings: 1 },
    ],
    [
      '[R6] two readings that part at the first move',
      KNIGHTS,
      'Nd2',
      { line: [], readings: 2, kind: 'answer' },
    ],
    [
      '[R4] a text of the solver alone',
      ITALIAN,
      'Bxf7+ then Nxe5+',
      { line: ['c4f7', 'f3e5'], solverOnly: true },
    ],
    [
      '[R2] the line ends before a move that cannot be played',
      ITALIAN,
      '1.Bxf7+ Kxf7 2.Qxf7',
      { line: ['c4f7', 'e8f7'], readings: 1, impossibleAt: 3 },
    ],
    [
      'chatter has no line',
      BACK_RANK,
      'Love the show!',
      { line: null, branches: [], readings: 0, solverOnly: false, impossibleAt: null, kind: 'chatter' },
    ],
  ])('%s', async (_what, fen, text, expected) => {
    const { status, out, err } = await tailpiece(['read'], ask('x', fen, text));
    expect([status, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ id: 'x', ...expected });
    expect(Object.keys(answer)).toEqual([
      'id',
      'line',
      'branches',
      'readings',
      'solverOnly',
      'impossibleAt',
      'kind',
    ]);
  });
});

describe('malformed lines', () => {
  test('each is answered in its place with its number, reading goes on, the status is 2', async () => {
    const input = [
      ask(1, START_FEN, 'e4'),
      'not json\n',
      '[1,2]\n',
      '\n',
      '{"id":5}\n',
      ask(6, '8/8/8/8/8/8/8/8 w - - 0 1', 'e4'),
      `{"id":7,"fen":"${START_FEN}"}\n`,
      `{"fen":"${START_FEN}","text":"e4"}\n`,
      `{"id":9,"fen":"${START_FEN}","text":["e4"]}\n`,
      `{"id":10,"fen":"${START_FEN}","text":"${'x'.repeat(1_100_000)}"}\n`,
      ask('eleven', START_FEN, 'd4'),
    ].join('');
    const { status, out, err } = await tailpiece(['read'], input);
    expect([status, err]).toEqual([2, '']);
    const lines = jsonLines(out);
    expect(lines.slice(1, 10)).toEqual([
      { line: 2, error: 'expected a JSON object, found "not json"' },
      { line: 3, error: 'expected a JSON object, found [1,2]' },
      { line: 4, error: 'expected a JSON object, found an empty line' },
      { line: 5, error: '"fen": expected a text, found nothing' },
      { line: 6, error: '"fen": White must have one king and has 0.' },
      { line: 7, error: '"text": expected a text, found nothing' },
      { line: 8, error: '"id": expected a text or a number, found nothing' },
      { line: 9, error: '"text": expected a text, found ["e4"]' },
      { line: 10, error: 'expected a line of at most 1048576 bytes' },
    ]);
    expect(lines[0]).toMatchObject({ id: 1, line: ['e2e4'] });
    expect(lines[10]).toMatchObject({ id: 'eleven', line: ['d2d4'] });
    expect(lines).toHaveLength(11);
  });

  test('bytes that are no text are answered too', async () => {
    const child = startTailpiece(['read']);
    child.stdin.end(Buffer.from([0xff, 0xfe, 10]));
    const [out] = await once(child.stdout, 'data');
    expect(JSON.parse(String(out))).toEqual({ line: 1, error: 'expected UTF-8 text' });
    expect(await once(child, 'close')).toEqual([2, null]);
  });

  test('no input at all is no error', async () => {
    expect(await tailpiece(['read'], '')).toEqual({ status: 0, out: '', err: '' });
  });
});

describe('streaming', () => {
  test('a line is answered while the input is still open', async () => {
    const child = startTailpiece(['read']);
    child.stdin.write(ask(1, START_FEN, 'e4'));
    const [first] = await once(child.stdout, 'data');
    expect(JSON.parse(String(first))).toMatchObject({ id: 1 });
    child.stdin.end();
    expect(await once(child, 'close')).toEqual([0, null]);
  });

  test('a reader that does not read stops the reading: memory stays where it was', async () => {
    const child = startTailpiece(['read']);
    const line = ask(1, START_FEN, `1.e4 ${'and so on '.repeat(90)}`).repeat(100);
    let written = 0;
    // Nobody reads the answers: after the pipes are full, nothing more may be taken.
    for (let stalled = 0; stalled < 10; ) {
      const isTaken = child.stdin.write(line);
      written += line.length;
      if (isTaken) continue;
      const drained = await Promise.race([
        once(child.stdin, 'drain').then(() => true),
        new Promise<boolean>((resolve) => setTimeout(() => resolve(false), 300)),
      ]);
      stalled = drained ? 0 : stalled + 1;
      if (stalled > 2 || written > 100_000_000) break;
    }
    expect(written).toBeLessThan(20_000_000);
    child.kill();
    await once(child, 'close');
  });

  test('200,000 lines in order, with a memory that does not grow', async () => {
    const LINES = 200_000;
    const child = startTailpiece(['read']);
    const peaks: number[] = [];
    let answered = 0;
    let isInOrder = true;
    let rest = '';
    child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
      const lines = (rest + chunk).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) {
        isInOrder &&= line.startsWith(`{"id":${answered},"line":["e2e4"]`);
        answered += 1;
        if (answered % 50_000 === 0) peaks.push(residentMiB(child.pid));
      }
    });
    for (let at = 0; at < LINES; at += 500) {
      let block = '';
      for (let id = at; id < at + 500; id += 1) block += ask(id, START_FEN, 'e4');
      if (!child.stdin.write(block)) await once(child.stdin, 'drain');
    }
    child.stdin.end();
    expect(await once(child, 'close')).toEqual([0, null]);
    expect([answered, isInOrder]).toEqual([LINES, true]);
    expect(peaks).toHaveLength(4);
    // The collector finds its size within the first 100,000 lines; behind them memory stays within its margin.
    const [, settled = 0, ...later] = peaks;
    expect(Math.max(...later) - settled).toBeLessThan(40);
    expect(Math.max(...peaks)).toBeLessThan(250);
  });

  test('a reader that goes away ends it quietly', async () => {
    const child = startTailpiece(['read']);
    let err = '';
    child.stderr.on('data', (chunk) => {
      err += String(chunk);
    });
    child.stdin.on('error', () => {});
    child.stdout.destroy();
    for (let lines = 0; lines < 2000; lines += 1) child.stdin.write(ask(lines, START_FEN, 'e4'));
    child.stdin.end();
    expect(await once(child, 'close')).toEqual([1, null]);
    expect(err).toBe('');
  });
});

function residentMiB(pid: number | undefined): number {
  const [, pages = '0'] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ');
  return (Number(pages) * 4096) / 1_048_576;
}

// A UCI program with one fault, named by its first argument; "none" is a well-behaved one that always
// answers e2e4. Further arguments are what the fault needs.

import { spawn } from 'node:child_process';
import { appendFileSync, writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';

const [fault = 'none', extra = ''] = process.argv.slice(2);
const say = (line) => process.stdout.write(`${line}\n`);

if (fault === 'dies') process.exit(3);
if (fault === 'leaves-a-child' || fault === 'heeds-nothing') {
  const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], { stdio: 'inherit' });
  writeFileSync(extra, `${process.pid} ${child.pid}`);
}
if (fault === 'leaves-a-runaway') {
  // Of a session of its own, so that no signal to the group of this program reaches it.
  const args = ['-e', 'setInterval(() => {}, 1000)'];
  const child = spawn(process.execPath, args, { stdio: 'ignore', detached: true });
  child.unref();
  writeFileSync(extra, `${process.pid} ${child.pid}`);
}
if (fault === 'a-gigabyte') {
  const piece = 'x'.repeat(1_000_000);
  let left = 1000;
  const pour = () => {
    left -= 1;
    if (left > 0) process.stdout.write(piece, pour);
  };
  pour();
}
if (fault === 'empty-lines') {
  const pour = () => process.stdout.write('\n'.repeat(1_000_000), pour);
  pour();
}
if (fault === 'no-end-of-line') setInterval(() => process.stdout.write('x'.repeat(10_000)), 5);
if (fault === 'never-ends-talking') {
  const talk = () =>
    process.stdout.write(`info string ${'y'.repeat(1000)}\n`.repeat(500), () => setTimeout(talk, 1));
  talk();
}

const answers = {
  none: [
    'info depth 1 score cp 20 pv e2e4',
    'info depth 9 seldepth 12 multipv 1 score cp 31 nodes 900 pv e2e4 e7e5 g1f3',
    'bestmove e2e4 ponder e7e5',
  ],
  mates: ['info depth 3 score mate 2 pv e2e4', 'bestmove e2e4'],
  'other-lines': [
    'info depth 9 multipv 1 score cp 31 pv e2e4',
    'info depth 9 multipv 2 score cp -500 pv a2a3',
    'info depth 10 score cp 90 lowerbound pv e2e4',
    'bestmove e2e4',
  ],
  'illegal-move': ['bestmove e2e5'],
  'illegal-line': ['info depth 1 score cp 20 pv e2e4 e2e4', 'bestmove e2e4'],
  'no-move': ['bestmove (none)'],
  notation: ['bestmove Nf3'],
  'hostile-move': ['bestmove e2e4;rm'],
  binary: ['\u0000\u00ff\u00fe', 'bestmove \u0000\u0001'],
  'bare-word': ['bestmove'],
  'ignores-quit': ['bestmove e2e4'],
  'leaves-a-child': ['bestmove e2e4'],
};

const MUTE = ['mute', 'no-end-of-line', 'never-ends-talking', 'a-gigabyte', 'empty-lines', 'heeds-nothing'];

function nameFor(what) {
  if (what === 'tells') return `${JSON.stringify(process.env)} ${process.cwd()} ${process.argv.length}`;
  if (what === 'tells-arguments') return JSON.stringify(process.argv.slice(3));
  return what === 'odd-name' ? 'Odd\u0000\u001b[31m One' : 'Odd One';
}

createInterface({ input: process.stdin }).on('line', (line) => {
  if (fault === 'records') appendFileSync(extra, `${line}\n`);
  if (MUTE.includes(fault) && line !== 'quit') return;
  if (line === 'uci') {
    say(`id name ${nameFor(fault)}`);
    if (fault !== 'no-uciok') say('uciok');
  } else if (line === 'isready') {
    if (fault !== 'no-readyok') say('readyok');
  } else if (line.startsWith('position')) {
    if (fault === 'echoes') say(`id name ${line}`);
  } else if (line.startsWith('go')) {
    if (fault === 'dies-thinking') process.exit(0);
    if (fault === 'needs-stop' || fault === 'never-answers') return;
    if (fault === 'answers-late') return void setTimeout(() => say('bestmove e2e4'), 3000);
    for (const answer of answers[fault] ?? answers.none) say(answer);
  } else if (line === 'stop') {
    if (fault === 'needs-stop') say('bestmove d2d4');
  } else if (line === 'quit') {
    if (fault !== 'ignores-quit' && fault !== 'leaves-a-child') process.exit(0);
  }
});
if (['ignores-quit', 'leaves-a-child', 'heeds-nothing'].includes(fault)) setInterval(() => {}, 1000);

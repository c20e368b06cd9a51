// Runs a program of the build under this Node, its output kept and shown only where it fails.

import { spawn } from 'node:child_process';

/** Resolves when the program ends well; else rejects with the end of what it said. */
export function runStep(root: string, words: readonly string[], env: Record<string, string>): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...words], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    const keep = (chunk: Buffer) => {
      said = (said + chunk.toString()).slice(-8000);
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`${words[0]} failed (status ${code}):\n${said}`));
    });
  });
}

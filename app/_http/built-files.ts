import { readFileSync } from 'node:fs';
import { join } from 'node:path';

let manifest: Readonly<Record<string, string>> | null = null;

/** The address of a built browser file: `builtFile('board.js')` is `/built/board.HASH.js`. Read once a process. */
export function builtFile(name: string): string {
  if (manifest === null) {
    const file = join(/* turbopackIgnore: true */ process.cwd(), 'public', 'built', 'manifest.json');
    const read: Readonly<Record<string, string>> = JSON.parse(readFileSync(file, 'utf8'));
    manifest = read;
  }
  const built = manifest[name];
  if (built === undefined) throw new Error(`public/built has no ${name}; run npm run build`);
  return `/built/${built}`;
}

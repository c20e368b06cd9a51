// Compiles the engine's kernel from its source into a module that carries it as text: no path has
// to be found at run time, in tests, web server or threads, and no binary is trusted from the tree.

import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buildOnce } from './inner/build-stamp.ts';

const SOURCE = 'lib/engine/kernel';
const ENTRY = 'kernel.ts';
const OUTPUT = 'lib/engine/inner/kernel-wasm.ts';
// The first two MiB are laid out by hand (kernel/layout.ts): the compiler's constants lie above.
const OPTIONS = '-O3 --noAssert --converge --runtime stub --memoryBase 2097152 --initialMemory 34'.split(' ');

/** Writes the kernel module into the engine room; false where it was already up to date. */
export function buildKernel(root: string): Promise<boolean> {
  const files = readdirSync(join(root, SOURCE), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${SOURCE}/${name.replaceAll('\\', '/')}`);
  files.push('lib/start/build-kernel.ts', 'node_modules/assemblyscript/package.json');
  return buildOnce({ root, name: 'kernel', files, outputs: [OUTPUT] }, async () => {
    const target = join(root, OUTPUT);
    mkdirSync(dirname(target), { recursive: true });
    // Two builds at once must never leave half a file to a reader.
    const draft = `${target}.${process.pid}.draft`;
    writeFileSync(draft, moduleText(await compile(root)));
    renameSync(draft, target);
  });
}

async function compile(root: string): Promise<Uint8Array> {
  const { main } = await import('assemblyscript/asc');
  let wasm: Uint8Array | null = null;
  let said = '';
  const { error } = await main([`${SOURCE}/${ENTRY}`, '--baseDir', root, '-o', 'kernel.wasm', ...OPTIONS], {
    stdout: { write: () => true },
    stderr: {
      write: (text: string | Uint8Array) => {
        said += String(text);
        return true;
      },
    },
    writeFile: (_name: string, bytes: string | Uint8Array) => {
      if (typeof bytes !== 'string') wasm = bytes;
    },
  });
  if (error || !wasm) throw new Error(`The kernel does not compile:\n${said}${error?.message ?? ''}`);
  return wasm;
}

function moduleText(wasm: Uint8Array): string {
  const hash = createHash('sha256').update(wasm).digest('hex').slice(0, 8);
  return [
    `// Made by lib/start/build-kernel.ts from ${SOURCE}.`,
    `export const KERNEL_HASH = '${hash}';`,
    `export const KERNEL_WASM_BASE64 =\n  '${Buffer.from(wasm).toString('base64')}';`,
    '',
  ].join('\n');
}

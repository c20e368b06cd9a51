// The command line: `npm run -s tailpiece -- COMMAND ...`. Answers on standard output, all else on
// standard error; exit status 0 done, 2 bad arguments or input, 1 anything else.

import { parseArguments } from './inner/arguments.ts';
import { COMMANDS, usage } from './inner/commands.ts';
import { complain } from './inner/output.ts';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // Where the reader has gone away, as with `| head`, nobody is left to tell.
  if (error.code !== 'EPIPE') complain(`cannot write: ${error.message}`);
  process.exit(1);
});

process.exitCode = await main(process.argv.slice(2));

async function main([name, ...words]: readonly string[]): Promise<number> {
  if (name === '--help' || name === 'help') {
    process.stdout.write(usage());
    return 0;
  }
  const command = COMMANDS.find((one) => one.name === name);
  if (command === undefined) {
    const known = COMMANDS.map((one) => one.name).join(', ');
    complain(
      name === undefined
        ? `which command? Expected one of ${known}`
        : `"${name}" is no command: expected one of ${known}`,
    );
    return 2;
  }
  const values = parseArguments(command.options, words);
  if (!values.ok) {
    complain(`${command.name}: ${values.reason}`);
    return 2;
  }
  try {
    return await command.run(values.value);
  } catch (error) {
    complain(`${command.name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    return 1;
  }
}

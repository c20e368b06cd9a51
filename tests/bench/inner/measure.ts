// How long does something take? CPU time of the process, everything in it counted; runs alternate, so
// that a busy machine slows both sides alike; medians.

/** Milliseconds of CPU time of the process, all its threads, while `work` ran. */
export function cpuMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

/** Something to measure: `repeats` runs count as one, for what is too short to be measured alone. */
export interface Contender {
  readonly name: string;
  readonly repeats?: number;
  readonly work: () => void;
}

/** Runs each once unmeasured, then all in turn `rounds` times; the median time of one run, by name. */
export function alternate(contenders: readonly Contender[], rounds: number): Map<string, number> {
  const times = new Map<string, number[]>(contenders.map(({ name }) => [name, []]));
  for (const { work } of contenders) work();
  for (let round = 0; round < rounds; round += 1) {
    for (const { name, work, repeats = 1 } of contenders) {
      const all = cpuMs(() => {
        for (let n = 0; n < repeats; n += 1) work();
      });
      times.get(name)?.push(all / repeats);
    }
  }
  return new Map([...times].map(([name, all]) => [name, median(all)]));
}

/** One line of a bench; true where the floor is met. */
export function say(
  what: string,
  found: string,
  wanted?: { floor: string; aim: string; isMet: boolean },
): boolean {
  const bound = wanted
    ? `   floor ${wanted.floor}, aim ${wanted.aim}${wanted.isMet ? '' : '   BELOW THE FLOOR'}`
    : '';
  process.stdout.write(`${what.padEnd(58)} ${found}${bound}\n`);
  return wanted?.isMet ?? true;
}

/** Ends the process with status 1 where a floor was missed. */
export function finish(floors: readonly boolean[]): void {
  process.exitCode = floors.every(Boolean) ? 0 : 1;
}

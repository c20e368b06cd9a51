// In which order do jobs wait? A host before viewers; viewers in turn by answer, so that one long
// answer does not hold up the others.

/** Who waits for a job. Jobs of one answer share `answerId`. */
export type JobOwner = { readonly for: 'host' } | { readonly for: 'viewer'; readonly answerId: string };

/** A queue of jobs with the order of mechanics: hosts first in, first out; then one job an answer in turn. */
export interface JobQueue<T> {
  add(job: T, owner: JobOwner): void;
  next(): T | null;
  remove(job: T): boolean;
  /** All that wait, which are then gone. */
  drain(): T[];
  readonly length: number;
}

export function createJobQueue<T>(): JobQueue<T> {
  const hosts: T[] = [];
  // Insertion order is the turn: an answer that was served goes to the end.
  const answers = new Map<string, T[]>();
  const takeTurn = (): T | null => {
    const turn = answers.entries().next();
    if (turn.done) return null;
    const [answerId, jobs] = turn.value;
    const job = jobs.shift() ?? null;
    answers.delete(answerId);
    if (jobs.length > 0) answers.set(answerId, jobs);
    return job;
  };
  return {
    add(job, owner) {
      if (owner.for === 'host') hosts.push(job);
      else answers.set(owner.answerId, [...(answers.get(owner.answerId) ?? []), job]);
    },
    next: () => hosts.shift() ?? takeTurn(),
    remove(job) {
      for (const [answerId, jobs] of [...answers, ['', hosts] as const]) {
        const place = jobs.indexOf(job);
        if (place < 0) continue;
        jobs.splice(place, 1);
        if (jobs.length === 0 && jobs !== hosts) answers.delete(answerId);
        return true;
      }
      return false;
    },
    drain() {
      const all = [...hosts, ...[...answers.values()].flat()];
      hosts.length = 0;
      answers.clear();
      return all;
    },
    get length() {
      return [...answers.values()].reduce((sum, jobs) => sum + jobs.length, hosts.length);
    },
  };
}

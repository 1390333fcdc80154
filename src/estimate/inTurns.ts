/** Threads that are asked one thing after another, wherever they run. */
export interface Pool<Thread, Ask> {
  readonly threads: number;
  readonly start: () => Thread;
  readonly end: (thread: Thread) => unknown;
  /** What is asked next; undefined when nothing is left. */
  readonly next: () => Ask | undefined;
  /** @returns whether the thread can be asked again */
  readonly answer: (thread: Thread, ask: Ask) => Promise<boolean>;
}

/** Starts the threads and asks each until nothing is left to ask; every thread is ended, also after an error. */
export async function inTurns<Thread, Ask>({ threads, start, end, next, answer }: Pool<Thread, Ask>): Promise<void> {
  const serve = async (): Promise<void> => {
    const thread = start();
    try {
      for (let ask = next(); ask !== undefined; ask = next()) if (!(await answer(thread, ask))) return;
    } finally {
      await end(thread);
    }
  };
  await Promise.all(Array.from({ length: threads }, serve));
}

/**
 * Does the work for every item, at most `limit` at once, in the order of the items. After a failure no new
 * work is begun, what is under way is waited for, and then the first error is thrown: when this returns or
 * throws, nothing of it is still running.
 */
export async function concurrently<T>(
  items: Iterable<T>,
  limit: number,
  work: (item: T) => Promise<void>,
): Promise<void> {
  const queue = [...items];
  let failure: { readonly error: unknown } | undefined;
  const worker = async (): Promise<void> => {
    while (queue.length > 0 && !failure) {
      try {
        await work(queue.shift()!);
      } catch (error) {
        failure ??= { error };
      }
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, limit) }, worker));
  if (failure) throw failure.error;
}

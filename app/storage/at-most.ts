// Runs many small file jobs a few at a time: all at once would exhaust the system's open files.

/** Results in the order of the items. The first failure ends it; jobs that have begun are waited for. */
export async function mapAtMost<Item, Outcome>(
  items: readonly Item[],
  limit: number,
  job: (item: Item) => Promise<Outcome>,
): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  const failures: unknown[] = [];
  let next = 0;
  async function work(): Promise<void> {
    while (next < items.length && failures.length === 0) {
      const index = next++;
      try {
        outcomes[index] = await job(items[index] as Item);
      } catch (error) {
        failures.push(error);
      }
    }
  }
  await Promise.all(Array.from({ length: Math.min(limit, items.length) }, work));
  if (failures.length > 0) throw failures[0];
  return outcomes;
}

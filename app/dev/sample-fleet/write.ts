// Writes the sample fleet anew: `npx tsx app/dev/sample-fleet/write.ts`. What lay there before is replaced; only the sample is touched.
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sampleFleetFiles } from './sample-fleet.ts';

const folder = fileURLToPath(new URL('../../../sample-fleet/current/', import.meta.url));
const files = sampleFleetFiles();
await rm(folder, { recursive: true, force: true });
for (const [path, bytes] of files) {
  const file = join(folder, path);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, bytes);
}
console.log(`Sample fleet written: ${files.size} files.`);

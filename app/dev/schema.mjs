// `npm run schema`: writes the JSON Schemas of the records into app/storage/schema, generated from the program's own schemas.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { register } from 'tsx/esm/api';
import { projectFolder } from './project-paths.mjs';

register();
const { recordJsonSchemas } = await import('../storage/record-json-schema.ts');
for (const [name, schema] of Object.entries(recordJsonSchemas())) {
  const file = path.join(projectFolder, 'app', 'storage', 'schema', `${name}.schema.json`);
  writeFileSync(file, `${JSON.stringify(schema, null, 2)}\n`);
  console.log(path.relative(projectFolder, file));
}
// In the form of every other file here.
execFileSync(
  process.execPath,
  [
    path.join(projectFolder, 'node_modules', '@biomejs', 'biome', 'bin', 'biome'),
    'format',
    '--write',
    'app/storage/schema',
  ],
  {
    cwd: projectFolder,
  },
);

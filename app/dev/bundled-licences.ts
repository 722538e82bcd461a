// For the build: notes which packages really end up in a bundle, and lays their licences beside the bundles for the About box.
// A package that names no licence stops the build.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

type Licence = { readonly name: string; readonly version: string; readonly licence: string; readonly text: string };

/** Data with a licence of its own inside a package: what its makers ask to be said. */
const attributions: Readonly<Record<string, string>> = {
  'date-holidays':
    'The data on public holidays is by the contributors of date-holidays under CC BY-SA 3.0 (creativecommons.org/licenses/by-sa/3.0), drawn from Wikipedia articles that its files name. It is used unchanged.\n\n',
};
const bundlesOfProgram = ['client', 'main'];

/** The folder of the package that a module lies in; null for our own sources and for what the bundler adds. */
function packageFolderOf(moduleId: string): string | null {
  const file = moduleId.replace(/^\0/, '').replace(/\?.*$/, '');
  return /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(file)?.[1] ?? null;
}

function licenceOf(folder: string): Licence {
  const manifest = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((name) => /^(licen[cs]e|copying)/i.test(name));
  const readme = readdirSync(folder).find((name) => /^readme/i.test(name));
  // A few packages keep it in the last part of what they say of themselves.
  const inReadme =
    readme === undefined ? '' : /\n#+ *licen[cs]e[\s\S]*$/i.exec(readFileSync(path.join(folder, readme), 'utf8'))?.[0];
  const text = file === undefined ? (inReadme ?? '').trim() : readFileSync(path.join(folder, file), 'utf8').trim();
  const { name, version } = manifest;
  // Where the manifest names none, the text says it.
  const licence = manifest.license ?? /^\s*(?:The )?MIT License/i.exec(text)?.[0].trim();
  if (typeof licence !== 'string')
    throw new Error(`The package ${name} says nothing of its licence. Look it up before it is shipped.`);
  return {
    name,
    version,
    licence,
    text: `${attributions[name] ?? ''}${text || `The package carries no text of its licence; its manifest says ${licence}.`}`,
  };
}

/** @param fontsFolder the fonts of page and paper, with their licence beside them */
export function bundledLicences(builtFolder: string, fontsFolder: string): Plugin {
  const file = path.join(builtFolder, 'licences.json');
  return {
    name: 'lotwright-licences',
    apply: 'build',
    applyToEnvironment: (environment) => bundlesOfProgram.includes(environment.name),
    writeBundle(_options, bundle) {
      const folders = new Set<string>();
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk') continue;
        for (const id of chunk.moduleIds) folders.add(packageFolderOf(id) ?? '');
      }
      folders.delete('');
      const known: Licence[] = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
      const fonts = {
        name: 'Source Sans 3 (fonts)',
        version: '3',
        licence: 'OFL-1.1',
        text: readFileSync(path.join(fontsFolder, 'LICENSE.txt'), 'utf8').trim(),
      };
      const all = new Map(
        [fonts, ...known, ...[...folders].map(licenceOf)].map((one) => [`${one.name} ${one.version}`, one]),
      );
      const sorted = [...all.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
      writeFileSync(file, `${JSON.stringify(sorted, null, 1)}\n`);
    },
  };
}

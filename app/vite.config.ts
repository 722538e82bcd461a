// Builds the whole program with one tool: the page, and three Node bundles of one file each. Builds offline.
import { cpSync, existsSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type EnvironmentOptions, type Plugin } from 'vite';
import { bundledLicences } from './dev/bundled-licences.ts';

const appFolder = import.meta.dirname;
const rendererFolder = path.join(appFolder, '..', 'renderer');
const fontsFolder = path.join(appFolder, 'printing', 'fonts');
// Where the result goes; the build tool gives a folder of its own and swaps it in when all is done.
const builtFolder = process.env.LOTWRIGHT_BUILD_INTO ?? path.join(appFolder, 'built');

/** One CommonJS file that needs nothing beside it but Node (and electron): what Electron 25 (Node 18) can load. */
function nodeBundle(name: string, entry: string): EnvironmentOptions {
  return {
    consumer: 'server',
    resolve: { noExternal: true, external: ['electron'], conditions: ['node'] },
    build: {
      ssr: true,
      target: 'node18',
      outDir: builtFolder,
      emptyOutDir: false,
      minify: false,
      sourcemap: true,
      copyPublicDir: false,
      rolldownOptions: {
        input: { [name]: path.join(appFolder, entry) },
        output: { format: 'cjs', entryFileNames: '[name].cjs', codeSplitting: false },
      },
    },
  };
}

/** Refuses a Node bundle that would look for something else at run time: there is no node_modules in the program. */
function selfContained(): Plugin {
  const allowed: Record<string, (id: string) => boolean> = {
    main: (id) => id === 'electron' || isBuiltin(id),
    sheets: (id) => isBuiltin(id),
    // A sandboxed preload script can require electron only.
    preload: (id) => id === 'electron',
  };
  return {
    name: 'lotwright-self-contained',
    apply: 'build',
    generateBundle(_options, bundle) {
      const isAllowed = allowed[this.environment.name];
      if (!isAllowed) return;
      const outputs = Object.values(bundle).filter((output) => !output.fileName.endsWith('.map'));
      const chunks = outputs.filter((output) => output.type === 'chunk');
      const outside = chunks
        .flatMap((chunk) => [...chunk.imports, ...chunk.dynamicImports])
        // A module loaded later lies in the same file, which then names itself.
        .filter((id) => !isAllowed(id) && !chunks.some((chunk) => chunk.fileName === id));
      if (outside.length > 0) this.error(`The bundle "${this.environment.name}" still needs: ${outside.join(', ')}`);
      if (outputs.length !== 1) {
        this.error(
          `The bundle "${this.environment.name}" is not one file: ${outputs.map((o) => o.fileName).join(', ')}`,
        );
      }
    },
  };
}

/** Lays the printing fonts beside the bundles, which read them from disk when they print. */
function printingFonts(): Plugin {
  return {
    name: 'lotwright-printing-fonts',
    apply: 'build',
    applyToEnvironment: (environment) => environment.name === 'main',
    writeBundle() {
      if (existsSync(fontsFolder)) cpSync(fontsFolder, path.join(builtFolder, 'fonts'), { recursive: true });
    },
  };
}

export default defineConfig({
  root: rendererFolder,
  base: './',
  publicDir: false,
  envDir: false,
  logLevel: 'warn',
  plugins: [react(), selfContained(), printingFonts(), bundledLicences(builtFolder, fontsFolder)],
  environments: {
    client: {
      build: {
        target: 'chrome114',
        outDir: path.join(builtFolder, 'page'),
        emptyOutDir: true,
        // Nothing inline: the page's content security policy allows no inline script, no inline style and no data: font.
        assetsInlineLimit: 0,
        modulePreload: { polyfill: false },
        sourcemap: true,
        rolldownOptions: { input: path.join(rendererFolder, 'index.html') },
      },
    },
    main: nodeBundle('main', 'main.ts'),
    preload: nodeBundle('preload', 'preload.ts'),
    sheets: nodeBundle('sheets', 'sheets-command.ts'),
  },
  builder: {
    async buildApp(builder) {
      for (const environment of Object.values(builder.environments)) {
        // `ssr` is an environment that Vite always adds and nothing here uses.
        if (environment.name !== 'ssr') await builder.build(environment);
      }
    },
  },
});

// The security list as it stands in the sources: what the page may do, what it may load, and what the packed program refuses.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createBuilder } from 'vite';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { contentSecurityPolicy, pageHeaders } from '../../app/shell/page-headers.ts';
import { schemePrivileges } from '../../app/shell/scheme.ts';
import { webPreferences } from '../../app/shell/web-preferences.ts';
import { backgroundOf } from '../../app/shell/window-background.ts';
import { filesBelow, programSources, projectFolder, readSource } from './source-files.ts';

vi.mock('electron', () => ({}));

describe('the page’s process', () => {
  it('has a page’s rights and none more', () => {
    expect(webPreferences).toEqual({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      plugins: false,
      webgl: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      disableDialogs: true,
    });
  });

  it('is made in one place, with these rights', () => {
    const makers = programSources().filter((file) =>
      /new (BrowserWindow|BrowserView|WebContentsView)\(/.test(readSource(file)),
    );
    expect(makers).toEqual(['app/shell/window.ts']);
    expect(readSource('app/shell/window.ts')).toMatch(/webPreferences: \{\s*\.\.\.webPreferences,/);
  });

  it('is opened for the developer tools in development only', () => {
    const main = readSource('app/main.ts');
    expect(main).toContain('const isDevelopment = !app.isPackaged;');
    expect(main).toContain("const hasDeveloperTools = isDevelopment && app.commandLine.hasSwitch('developer');");
    const openers = programSources().filter((file) => /openDevTools|toggleDevTools/.test(readSource(file)));
    expect(openers).toEqual(['app/shell/menu-template.ts']);
  });
});

describe('the content security policy', () => {
  it('forbids everything and then allows our own files', () => {
    expect(contentSecurityPolicy).toEqual({
      'default-src': "'none'",
      'script-src': "'self'",
      'style-src': "'self'",
      'img-src': "'self' data: blob:",
      'font-src': "'self'",
      'connect-src': "'self'",
      'form-action': "'none'",
      'base-uri': "'none'",
      'frame-src': "'none'",
      'frame-ancestors': "'none'",
    });
  });

  it('is sent, whole, and without anything unsafe', () => {
    const sent = pageHeaders['Content-Security-Policy'] ?? '';
    expect(sent.split('; ')).toHaveLength(Object.keys(contentSecurityPolicy).length);
    expect(sent).not.toMatch(/unsafe|\*|https?:|nonce/);
  });

  it('is not needed against our own page: nothing inline in it', () => {
    const html = readSource('renderer/index.html');
    expect(html).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/i);
    expect(html.match(/<script(?![^>]*\ssrc=)/gi)).toBeNull();
  });
});

describe('the scheme', () => {
  it('has an origin, and no way around the rules', () => {
    expect(schemePrivileges).toEqual({
      standard: true,
      secure: true,
      bypassCSP: false,
      allowServiceWorkers: false,
      supportFetchAPI: false,
      corsEnabled: false,
      stream: false,
    });
  });
});

describe('the sources', () => {
  it('open no address outside, turn no text into code, and use no dialog of the system’s from the page', () => {
    const forbidden =
      /openExternal|\beval\(|new Function\(|dangerouslySetInnerHTML|\.innerHTML\b|executeJavaScript|insertCSS/;
    expect(programSources().filter((file) => forbidden.test(readSource(file)))).toEqual([]);
    const dialogs = /\b(window\.)?(alert|confirm|prompt)\(/;
    const page = programSources().filter((file) => file.startsWith('renderer/'));
    expect(page.filter((file) => dialogs.test(readSource(file)))).toEqual([]);
  });

  it('name no address on a network', () => {
    // Names of XML vocabularies look like addresses; nobody calls there.
    const address = /\b(https?|wss?|ftp):\/\/(?!www\.w3\.org\/|www\.aiim\.org\/pdf(a|ua)\/ns\/)/;
    const sources = [...programSources(), ...filesBelow('renderer', /\.(css|html)$/)];
    const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm, '');
    expect(sources.filter((file) => address.test(withoutComments(readSource(file))))).toEqual([]);
  });

  it('paint the window in the page’s own paper before the page is there', () => {
    const paper = (file: string) => /--paper: (#[0-9a-f]{6});/.exec(readSource(file))?.[1];
    expect(backgroundOf(false)).toBe(paper('renderer/styles/tokens.css'));
    expect(backgroundOf(true)).toBe(paper('renderer/styles/dark.css'));
  });
});

describe('the packed program', () => {
  const packing = readSource('electron-builder.yml');

  /** The entries below a key of the first column, as text; enough of YAML for this one file. */
  function section(key: string): Record<string, string> {
    const block = new RegExp(`^${key}:\\n((?:[ ]+.*\\n|\\n)+)`, 'm').exec(packing)?.[1] ?? '';
    const pairs = [...block.matchAll(/^ {2}(\w+): (\S.*)$/gm)].map((match) => [match[1], match[2]]);
    return Object.fromEntries(pairs);
  }

  it('has every fuse named and set', () => {
    expect(section('electronFuses')).toEqual({
      runAsNode: 'false',
      enableCookieEncryption: 'true',
      enableNodeOptionsEnvironmentVariable: 'false',
      enableNodeCliInspectArguments: 'false',
      enableEmbeddedAsarIntegrityValidation: 'true',
      onlyLoadAppFromAsar: 'true',
      loadBrowserProcessSpecificV8Snapshot: 'false',
      grantFileProtocolExtraPrivileges: 'false',
    });
    expect(packing).toMatch(/^asar: true$/m);
  });

  it('leaves people’s data alone when it is taken off, and publishes nothing', () => {
    expect(section('nsis').deleteAppDataOnUninstall).toBe('false');
    expect(packing).toMatch(/^publish: null$/m);
  });

  it('is made for Linux, Windows and macOS', () => {
    for (const system of ['linux', 'win', 'mac'])
      expect(packing).toMatch(new RegExp(`^${system}:\\n  target:\\n    - \\w`, 'm'));
  });
});

describe('the preload bundle', () => {
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'lotwright-preload-'));
    vi.stubEnv('LOTWRIGHT_BUILD_INTO', folder);
    const builder = await createBuilder({ configFile: path.join(projectFolder, 'app', 'vite.config.ts') });
    const preload = builder.environments.preload;
    if (!preload) throw new Error('The build has no environment named preload.');
    await builder.build(preload);
  });
  afterAll(() => {
    vi.unstubAllEnvs();
    rmSync(folder, { recursive: true, force: true });
  });

  it('is one file that needs Electron and nothing else', () => {
    expect(readdirSync(folder).filter((name) => !name.endsWith('.map'))).toEqual(['preload.cjs']);
    const bundle = readFileSync(path.join(folder, 'preload.cjs'), 'utf8');
    expect([...bundle.matchAll(/\b(?:require|import)\(([^)]*)\)/g)].map((match) => match[1])).toEqual(['"electron"']);
    expect(bundle).not.toMatch(/^\s*import\b/m);
  });

  it('carries no schema and hands out nothing of Electron', () => {
    const bundle = readFileSync(path.join(folder, 'preload.cjs'), 'utf8');
    expect(bundle.length).toBeLessThan(6_000);
    expect(bundle.match(/exposeInMainWorld/g)).toHaveLength(1);
    expect(existsSync(path.join(folder, 'main.cjs'))).toBe(false);
  });
});

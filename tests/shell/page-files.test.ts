// The page's scheme: files of the list and nothing else, with their rules, for GET only.
import { mkdir, mkdtemp, rm, symlink, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerPageRequest, listPageFiles, type PageFiles } from '../../app/shell/page-files.ts';

let folder: string;
let files: PageFiles;

beforeAll(async () => {
  const parent = await mkdtemp(path.join(tmpdir(), 'lotwright-page-'));
  folder = path.join(parent, 'page');
  await mkdir(path.join(folder, 'assets'), { recursive: true });
  await writeFile(path.join(parent, 'secret.html'), 'secret');
  await writeFile(path.join(folder, 'index.html'), '<p>page</p>');
  await writeFile(path.join(folder, 'assets', 'page.js'), '1');
  await writeFile(path.join(folder, 'assets', 'page.js.map'), '{}');
  await writeFile(path.join(folder, 'assets', 'page.css'), 'p{}');
  await writeFile(path.join(folder, 'assets', 'notes.txt'), 'not for a page');
  await writeFile(path.join(folder, 'assets', 'gone.js'), '2');
  await symlink(path.join(parent, 'secret.html'), path.join(folder, 'link.html'));
  files = await listPageFiles(folder, false);
});

afterAll(() => rm(path.dirname(folder), { recursive: true, force: true }));

function get(address: string): Promise<Response> {
  return answerPageRequest('GET', address, files);
}

describe('the list of files', () => {
  it('has what a page is made of, and no link, source map or other kind', () => {
    expect([...files.keys()].sort()).toEqual(['/assets/gone.js', '/assets/page.css', '/assets/page.js', '/index.html']);
  });

  it('has source maps for the developer tools only', async () => {
    expect((await listPageFiles(folder, true)).has('/assets/page.js.map')).toBe(true);
  });
});

describe('a request', () => {
  it.each([
    ['app://lotwright/index.html', 'text/html; charset=utf-8', '<p>page</p>'],
    ['app://lotwright/assets/page.js', 'text/javascript; charset=utf-8', '1'],
    ['app://lotwright/assets/page.css', 'text/css; charset=utf-8', 'p{}'],
  ])('for %s gets the file in its kind', async (address, contentType, body) => {
    const response = await get(address);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe(contentType);
    expect(await response.text()).toBe(body);
  });

  it.each([
    'app://lotwright/',
    'app://lotwright/nothing.html',
    'app://lotwright/link.html',
    'app://lotwright/assets/page.js.map',
    'app://lotwright/assets',
    'app://lotwright/../secret.html',
    'app://lotwright/..%2fsecret.html',
    'app://lotwright/%2e%2e/secret.html',
    'app://lotwright/%2e%2e%2fsecret.html',
    'app://lotwright/assets/..%5c..%5csecret.html',
    'app://lotwright/assets//page.js',
    'app://lotwright/index.html%00.js',
    'app://lotwright/index.html?fresh',
    'app://lotwright/INDEX.HTML',
    'app://other/index.html',
    'app://lotwright.example.invalid/index.html',
    'app://lotwright:80/index.html',
    'file:///etc/hostname',
    'not an address',
  ])('for %s is answered with 404', async (address) => {
    const response = await get(address);
    expect(response.status).toBe(404);
    expect(await response.text()).toBe('');
  });

  it.each(['POST', 'PUT', 'DELETE', 'HEAD', 'OPTIONS', 'get'])('by %s is refused', async (method) => {
    const response = await answerPageRequest(method, 'app://lotwright/index.html', files);
    expect(response.status).toBe(405);
    expect(response.headers.get('allow')).toBe('GET');
  });

  it('gets the page’s rules with every answer, refusals included', async () => {
    const post = await answerPageRequest('POST', 'app://lotwright/index.html', files);
    const responses = [await get('app://lotwright/index.html'), await get('app://lotwright/none'), post];
    for (const { headers } of responses) {
      expect(headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
    }
  });

  it('for a file that is gone from the disk is answered with 500', async () => {
    await unlink(path.join(folder, 'assets', 'gone.js'));
    expect((await get('app://lotwright/assets/gone.js')).status).toBe(500);
  });
});

// Answers requests for the page's files out of a fixed list made when the program starts. A request is looked up in that
// list; it is never joined to a path on the disk. Knows no Electron.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { pageHeaders } from './page-headers.ts';
import { isPageOrigin, parseAddress } from './page-origin.ts';

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};
/** For the developer tools only. */
const sourceMapType = { '.map': 'application/json; charset=utf-8' };

type PageFile = { readonly file: string; readonly contentType: string };
/** Keyed by the path of the address, '/assets/page.js'. */
export type PageFiles = ReadonlyMap<string, PageFile>;

async function addFolder(
  files: Map<string, PageFile>,
  folder: string,
  address: string,
  types: Readonly<Record<string, string>>,
): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const file = path.join(folder, entry.name);
    if (entry.isDirectory()) await addFolder(files, file, `${address}${entry.name}/`, types);
    const contentType = types[path.extname(entry.name)];
    if (entry.isFile() && contentType) files.set(`${address}${entry.name}`, { file, contentType });
  }
}

/** Lists every file of the built page whose kind a page needs. Links and other kinds are left out. */
export async function listPageFiles(folder: string, withSourceMaps: boolean): Promise<PageFiles> {
  const files = new Map<string, PageFile>();
  await addFolder(files, folder, '/', withSourceMaps ? { ...contentTypes, ...sourceMapType } : contentTypes);
  return files;
}

function refuse(status: 404 | 405 | 500, more: Record<string, string> = {}): Response {
  return new Response(null, { status, headers: { ...pageHeaders, ...more } });
}

/** One file of the list, or 404; 405 for anything but GET. */
export async function answerPageRequest(method: string, address: string, files: PageFiles): Promise<Response> {
  if (method !== 'GET') return refuse(405, { Allow: 'GET' });
  const url = parseAddress(address);
  if (url === null || !isPageOrigin(address) || url.search !== '') return refuse(404);
  const found = files.get(url.pathname);
  if (!found) return refuse(404);
  try {
    const body = await readFile(found.file);
    return new Response(body, { status: 200, headers: { ...pageHeaders, 'Content-Type': found.contentType } });
  } catch {
    return refuse(500);
  }
}
